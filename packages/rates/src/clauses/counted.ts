// What a fixed fee may count over the programme, its soloists, its holds and the costs that were told (nights, copies),
// and not over calls.

import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { inRange, rangeField } from '../dimension.ts';
import type { WorkFacts } from '../facts.ts';
import { fitsCall } from '../fit.ts';
import { counts } from '../item.ts';
import type { ClauseHead } from '../kind.ts';
import { sayRange } from '../phrases.ts';
import type { Voice } from '../voice.ts';

export const COUNTED = [
  'work',
  'requested work',
  'minute of music',
  'page',
  'soloist',
  'hold',
  'cost',
] as const;
export type Counted = (typeof COUNTED)[number];

/** Whether a fee is for what is counted, and not for calls. */
export function isCounted(each: string): each is Counted {
  return COUNTED.some((counted) => counted === each);
}

/** Which works count; all where it is left out. */
export const worksSchema = z
  .strictObject({
    minutes: rangeField('Works of this length', 'minutes'),
    pages: rangeField('Works of so many pages', 'count'),
    difficulties: z
      .array(z.string().min(1).max(60))
      .min(1)
      .max(40)
      .readonly()
      .optional()
      .meta({ title: 'Works of this difficulty' }),
  })
  .refine(
    ({ minutes, pages, difficulties }) => minutes || pages || difficulties,
    'asks for nothing. Say which works count, or leave it out',
  );
export type Works = z.output<typeof worksSchema>;

/** How many there are, and the names of what was counted. */
export function counted(
  each: Counted,
  { works, named }: { works?: Works | undefined; named?: readonly string[] | undefined },
  { facts }: Desk,
  clause: ClauseHead,
): { count: number; names: readonly string[] } {
  if (each === 'soloist') return { count: facts.sharers, names: [] };
  if (each === 'hold') {
    const held = facts.calls.filter(
      (call) =>
        call.standing.is === 'held' && !counts(call, facts.offered) && fitsCall(clause.for, call, facts),
    );
    return { count: held.length, names: held.map(({ label, kind }) => label ?? kind) };
  }
  if (each === 'cost') {
    const told = facts.costs.filter(({ what }) => !named || named.includes(what));
    return { count: told.length, names: told.map(({ what }) => what) };
  }
  const these = facts.programme.filter((work) => isOneOf(work, each, works));
  const names = these.map(({ title }) => title);
  const sum = (of: (work: WorkFacts) => number) => these.reduce((total, work) => total + of(work), 0);
  if (each === 'minute of music') return { count: sum(({ minutes }) => minutes), names };
  if (each === 'page') return { count: sum(({ pages = 0 }) => pages), names };
  return { count: these.length, names };
}

function isOneOf(work: WorkFacts, each: Counted, works: Works | undefined): boolean {
  if (each === 'requested work' && !work.requested) return false;
  const { minutes, pages, difficulties } = works ?? {};
  if (minutes && !inRange(minutes, work.minutes)) return false;
  if (pages && (work.pages === undefined || !inRange(pages, work.pages))) return false;
  return !difficulties || (work.difficulty !== undefined && difficulties.includes(work.difficulty));
}

/** “ in hard works of 5 minutes or more”, as it follows what is counted; empty where all works count. */
export function sayWorks(works: Works | undefined, voice: Voice): string {
  if (!works) return '';
  const { minutes, pages, difficulties } = works;
  const which = difficulties ? `${voice.either(difficulties)} works` : 'works';
  const of = [minutes && sayRange(minutes, 'minute'), pages && sayRange(pages, 'page')].filter(
    (part) => part !== undefined,
  );
  return ` among ${which}${of.length > 0 ? ` of ${voice.list(of)}` : ''}`;
}
