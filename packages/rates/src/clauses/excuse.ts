// What is forgiven when a call falls: for which reasons, and how many times.

import { dayAt, whenOf } from '@colla/calendar';
import { type Call, REASONS } from '@colla/hours';
import { z } from 'zod';
import type { Facts } from '../facts.ts';
import { countField } from '../fields.ts';
import { capital, REASON_WORDS } from '../phrases.ts';
import { termOf } from '../term.ts';
import type { Voice } from '../voice.ts';

export const excuseSchema = z.strictObject({
  reasons: z.array(z.enum(REASONS)).min(1).readonly().meta({ title: 'Reasons' }),
  atMost: countField('At most (times)', { least: 1 }).optional(),
  each: z.enum(['engagement', 'term']).default('engagement').meta({ title: 'Times counted for each' }),
});
export type Excuse = z.output<typeof excuseSchema>;

/**
 * Says call by call, asked in the order they happen, whether its fall is forgiven, and counts it. All calls that fall by
 * one word are one occasion.
 */
export function forgiving(excused: Excuse | undefined, facts: Facts): (call: Call) => boolean {
  const forgiven = new Map<string | undefined, Set<string>>();
  return (call) => {
    const { standing } = call;
    if (standing.is !== 'cancelled' && standing.is !== 'missed') return false;
    if (!excused?.reasons.includes(standing.reason)) return false;
    const span = excused.each === 'term' ? termOf(call, facts)?.name : undefined;
    const words = forgiven.get(span) ?? new Set();
    const word = wordOf(call);
    if (!words.has(word) && excused.atMost !== undefined && words.size >= excused.atMost) return false;
    forgiven.set(span, words.add(word));
    return true;
  };
}

/** The word by which a call fell: its instant, or the day of a call that nobody cancelled. */
function wordOf({ standing, planned }: Call): string {
  return standing.is === 'cancelled'
    ? String(standing.at.epochMilliseconds)
    : dayAt(whenOf(planned).dayNumber);
}

/** “ Illness or an emergency is forgiven twice a term.”, as it follows a sentence; empty where nothing is. */
export function sayExcuse(excused: Excuse | undefined, voice: Voice): string {
  if (!excused) return '';
  const { atMost } = excused;
  const count = atMost === undefined ? '' : atMost === 1 ? ' once' : ` ${atMost} times`;
  const times = excused.each === 'term' && count ? `${count} a term` : count;
  const reasons = REASONS.every((reason) => excused.reasons.includes(reason))
    ? 'any reason'
    : voice.either(excused.reasons.map((reason) => REASON_WORDS[reason]));
  return ` ${capital(reasons)} is forgiven${times}.`;
}
