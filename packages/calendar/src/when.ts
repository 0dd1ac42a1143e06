// When a span is, in plain figures: read from the calendar once for each span, since one statement asks many times and
// a place's clock is slow to read.

import { type Weekday, weekdayOf } from './day-number.ts';
import { minutesOf, type Span } from './span.ts';

/** A span's start and length: the instant in epoch milliseconds, the rest on the clock of its place. */
export interface When {
  readonly at: number;
  /** Elapsed whole minutes. */
  readonly minutes: number;
  /** Days since 1 January 1970, at the place. */
  readonly dayNumber: number;
  readonly weekday: Weekday;
  /** Minutes since midnight at which it starts. */
  readonly minuteOfDay: number;
}

const known = new WeakMap<Span, When>();

/** When a span is; the same object of a span is read once. */
export function whenOf(span: Span): When {
  const seen = known.get(span);
  if (seen) return seen;
  const when = read(span);
  known.set(span, when);
  return when;
}

function read(span: Span): When {
  const at = span.start.epochMilliseconds;
  const local = at + span.start.offsetNanoseconds / 1_000_000;
  const dayNumber = Math.floor(local / DAY);
  return {
    at,
    minutes: minutesOf(span),
    dayNumber,
    weekday: weekdayOf(dayNumber),
    minuteOfDay: Math.floor((local - dayNumber * DAY) / 60_000),
  };
}

const DAY = 86_400_000;
