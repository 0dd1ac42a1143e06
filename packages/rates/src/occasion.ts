// How often something is owed: for each call, day, week, month or term in which there is one, or once for the whole.

import { dayAt, mondayOf, Temporal, whenOf } from '@colla/calendar';
import type { Call } from '@colla/hours';
import type { Facts } from './facts.ts';
import { groupsOf } from './groups.ts';
import { termOf } from './term.ts';

export const EACH = ['call', 'day', 'week', 'month', 'term', 'engagement'] as const;
export type Each = (typeof EACH)[number];

/** One occasion: what falls into it, and the word that tells it from others of its kind (none for the whole). */
export interface Occasion<T> {
  readonly about?: string;
  readonly of: T[];
}

/**
 * Sorts things into the occasions of their calls, in the order given. A week begins on its Monday, a month on
 * its first, both on the calendar of the call's place. What has no call, or lies
 * outside every term, belongs to the whole.
 */
export function occasions<T>(
  things: readonly T[],
  each: Each,
  callOf: (thing: T) => Call | undefined,
  facts: Pick<Facts, 'terms'>,
): Occasion<T>[] {
  if (each === 'engagement') return things.length > 0 ? [{ of: [...things] }] : [];
  const found = groupsOf(things, (thing) => occasionOf(callOf(thing), each, facts));
  return [...found].map(([about, of]) => (about === undefined ? { of } : { about, of }));
}

/**
 * These days, weeks or months, and those between the first and the last of them in which there is nothing. Other sorts
 * of occasion have none between.
 */
export function withThoseBetween<T>(found: readonly Occasion<T>[], each: Each): Occasion<T>[] {
  const step = BETWEEN[each];
  const abouts = found.flatMap(({ about }) => about ?? []).toSorted();
  const [first] = abouts;
  const last = abouts.at(-1);
  if (!step || first === undefined || last === undefined) return [...found];
  const known = new Map(found.map((occasion) => [occasion.about, occasion]));
  const all: Occasion<T>[] = [];
  for (let day = Temporal.PlainDate.from(first.padEnd(10, '-01')); ; day = day.add(step)) {
    const about = day.toString().slice(0, first.length);
    if (about > last) return all;
    all.push(known.get(about) ?? { about, of: [] });
  }
}

const BETWEEN: Readonly<Partial<Record<Each, Temporal.DurationLike>>> = {
  day: { days: 1 },
  week: { weeks: 1 },
  month: { months: 1 },
};

/** The word that tells a call's occasion from others of its kind; none for the whole, and outside every term. */
export function occasionOf(
  call: Call | undefined,
  each: Each,
  facts: Pick<Facts, 'terms'>,
): string | undefined {
  if (!call || each === 'engagement') return undefined;
  if (each === 'call') return call.id;
  if (each === 'term') return termOf(call, facts)?.name;
  const { dayNumber } = whenOf(call.planned);
  if (each === 'week') return dayAt(mondayOf(dayNumber));
  const day = dayAt(dayNumber);
  return each === 'day' ? day : day.slice(0, 7);
}

/** Whether each occasion of one sort lies in one of another: a day in its week, but no week in one month. */
export function liesIn(inner: Each, outer: Each): boolean {
  return (
    inner === outer || inner === 'call' || outer === 'engagement' || (inner === 'day' && outer !== 'call')
  );
}

/** “each”, “a week”, “for the engagement”: as it follows a price. */
export function sayEach(each: Each): string {
  if (each === 'call') return 'each';
  return each === 'engagement' ? 'for the engagement' : `a ${each}`;
}
