// What is forgiven when a call falls: for which reasons, and how many times.

import { REASONS, type Reason } from '@colla/hours';
import { z } from 'zod';
import { countField } from '../fields.ts';
import { capital, REASON_WORDS } from '../phrases.ts';
import type { Voice } from '../voice.ts';

export const excuseSchema = z.strictObject({
  reasons: z.array(z.enum(REASONS)).min(1).readonly().meta({ title: 'Reasons' }),
  atMost: countField('At most (times)', { least: 1 }).optional(),
  each: z.enum(['engagement', 'term']).default('engagement').meta({ title: 'Times counted for each' }),
});
export type Excuse = z.output<typeof excuseSchema>;

/** Whether a reason is forgiven, and counts it. All calls that fall by one word are one occasion. */
export function forgives(
  excused: Excuse | undefined,
  reason: Reason,
  word: string,
  forgiven: Set<string>,
): boolean {
  if (!excused?.reasons.includes(reason)) return false;
  const may = forgiven.has(word) || excused.atMost === undefined || forgiven.size < excused.atMost;
  if (may) forgiven.add(word);
  return may;
}

/** “ Illness or an emergency is forgiven twice a term.”, as it follows a sentence; empty where nothing is. */
export function sayExcuse(excused: Excuse | undefined, voice: Voice): string {
  if (!excused) return '';
  const { atMost } = excused;
  const count = atMost === undefined ? '' : atMost === 1 ? ' once' : ` ${atMost} times`;
  const times = excused.each === 'term' && count ? `${count} a term` : count;
  return ` ${capital(voice.either(excused.reasons.map((reason) => REASON_WORDS[reason])))} is forgiven${times}.`;
}
