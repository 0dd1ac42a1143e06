// How often something is owed: for each call, day, week, month or term in which there is one, or once for the whole.

import { dayAt, dayNumber, mondayOf, Temporal, whenOf } from '@colla/calendar';
import type { Call } from '@colla/hours';
import type { Facts, Term } from './facts.ts';
import { groupsOf } from './groups.ts';
import { termOn } from './term.ts';

export const EACH = ['call', 'day', 'week', 'month', 'term', 'engagement'] as const;
export type Each = (typeof EACH)[number];

/** One occasion: what falls into it, and the word that tells it from others of its kind (none for the whole). */
export interface Occasion<T> {
  readonly about?: string;
  readonly of: T[];
}

/** When something is, as far as its occasion goes: that of a call, or a day. */
type Place = Call | Temporal.PlainDate | undefined;

/**
 * Sorts things into the occasions of their calls or days, in the order given. A week begins on its Monday, a month on
 * its first, both on the calendar of the call's place. What has neither call nor day, or lies outside every term,
 * belongs to the whole.
 */
export function occasions<T>(
  things: readonly T[],
  each: Each,
  placeOf: (thing: T) => Place,
  facts: Pick<Facts, 'terms'>,
): Occasion<T>[] {
  if (each === 'engagement') return things.length > 0 ? [{ of: [...things] }] : [];
  const found = groupsOf(things, (thing) => occasionOf(placeOf(thing), each, facts));
  return [...found].map(([about, of]) => (about === undefined ? { of } : { about, of }));
}

/** Those that are occasions of their sort: where the place has told its terms, what lies outside them is of none. */
export function withoutOutside<T>(
  found: readonly Occasion<T>[],
  each: Each,
  { terms = [] }: Pick<Facts, 'terms'>,
): Occasion<T>[] {
  return found.filter(({ about }) => each !== 'term' || terms.length === 0 || about !== undefined);
}

/**
 * These days, weeks, months or terms, and those between the first and the last of them in which there is nothing.
 * Other sorts of occasion have none between.
 */
export function withThoseBetween<T>(
  found: readonly Occasion<T>[],
  each: Each,
  { terms = [] }: Pick<Facts, 'terms'> = {},
): Occasion<T>[] {
  if (each === 'term') return termsThrough(found, terms);
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

function termsThrough<T>(found: readonly Occasion<T>[], terms: readonly Term[]): Occasion<T>[] {
  const names = terms
    .toSorted((one, other) => Temporal.PlainDate.compare(one.from, other.from))
    .map(({ name }) => name);
  const known = new Map(found.map((occasion) => [occasion.about, occasion]));
  const places = names.flatMap((name, place) => (known.has(name) ? [place] : []));
  const [first] = places;
  if (first === undefined) return [...found];
  return names
    .slice(first, (places.at(-1) ?? first) + 1)
    .map((about) => known.get(about) ?? { about, of: [] });
}

const BETWEEN: Readonly<Partial<Record<Each, Temporal.DurationLike>>> = {
  day: { days: 1 },
  week: { weeks: 1 },
  month: { months: 1 },
};

/** The word that tells the occasion of a call or day from others of its kind; none for the whole. */
export function occasionOf(place: Place, each: Each, facts: Pick<Facts, 'terms'>): string | undefined {
  if (!place || each === 'engagement') return undefined;
  if (!('planned' in place)) return occasionOn(dayNumber(place.toString()), each, facts);
  return each === 'call' ? place.id : occasionOn(whenOf(place.planned).dayNumber, each, facts);
}

function occasionOn(on: number, each: Each, facts: Pick<Facts, 'terms'>): string | undefined {
  switch (each) {
    case 'term':
      return termOn(on, facts)?.name;
    case 'week':
      return dayAt(mondayOf(on));
    case 'month':
      return dayAt(on).slice(0, 7);
    case 'day':
      return dayAt(on);
    default:
      return undefined;
  }
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
