// Some hours of every day, on the clock of a place: how much of a span lies within them.

import { Temporal } from 'temporal-polyfill';
import type { Span } from './span.ts';

/** From one time of day until another (`23:00`); past midnight where it ends at or before it begins. */
export interface DailyWindow {
  readonly from: string;
  readonly until: string;
}

/**
 * Elapsed whole minutes of a span that lie within some hours of the day, in the zone of its start. On a night when
 * clocks change they are counted as they were lived: from midnight until three is two hours then, or four.
 */
export function minutesWithin(window: DailyWindow, { start, end }: Span): number {
  const last = end.withTimeZone(start.timeZoneId).toPlainDate();
  let within = 0;
  for (
    let day = start.toPlainDate().subtract({ days: 1 });
    Temporal.PlainDate.compare(day, last) <= 0;
    day = day.add({ days: 1 })
  )
    within += overlap(opened(window, day, start.timeZoneId), { start, end });
  return Math.round(within / 60_000);
}

function opened({ from, until }: DailyWindow, day: Temporal.PlainDate, timeZone: string): Span {
  const closesOn = until <= from ? day.add({ days: 1 }) : day;
  return {
    start: day.toZonedDateTime({ timeZone, plainTime: from }),
    end: closesOn.toZonedDateTime({ timeZone, plainTime: until }),
  };
}

function overlap(one: Span, other: Span): number {
  const from = Math.max(one.start.epochMilliseconds, other.start.epochMilliseconds);
  const until = Math.min(one.end.epochMilliseconds, other.end.epochMilliseconds);
  return Math.max(0, until - from);
}
