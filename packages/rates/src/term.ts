// The term in which a call falls, where the place has told its terms.

import { dayAt, whenOf } from '@colla/calendar';
import type { Call } from '@colla/hours';
import type { Facts, Term } from './facts.ts';

/** The term of a call; undefined outside every term. */
export function termOf({ planned }: Call, facts: Pick<Facts, 'terms'>): Term | undefined {
  return termOn(whenOf(planned).dayNumber, facts);
}

/** The term of a day, by its number. */
export function termOn(dayNumber: number, { terms = [] }: Pick<Facts, 'terms'>): Term | undefined {
  if (terms.length === 0) return undefined;
  const day = dayAt(dayNumber);
  return terms.find(({ from, to }) => from.toString() <= day && day <= to.toString());
}
