// When a span is, as clauses ask it: read from the calendar once for each span, since one statement asks many
// times and a place's clock is slow to read.

import { type Span, Temporal } from '@colla/calendar';
import { type Call, timesOf } from '@colla/hours';

export const WEEKDAYS = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
] as const;
export type Weekday = (typeof WEEKDAYS)[number];

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

function read({ start, end }: Span): When {
  const at = start.epochMilliseconds;
  const local = at + start.offsetNanoseconds / 1_000_000;
  const dayNumber = Math.floor(local / DAY);
  return {
    at,
    minutes: Math.round((end.epochMilliseconds - at) / 60_000),
    dayNumber,
    weekday: WEEKDAYS[weekdayIndex(dayNumber)] ?? 'monday',
    minuteOfDay: Math.floor((local - dayNumber * DAY) / 60_000),
  };
}

/** Minutes between the agreed start of a call and its real one; none where it began on time or earlier. */
export function waitedMinutes(call: Call): number {
  return Math.max(0, Math.round((whenOf(timesOf(call)).at - whenOf(call.planned).at) / 60_000));
}

const DAY = 86_400_000;

/** 0 for a Monday; 1 January 1970 was a Thursday. */
function weekdayIndex(dayNumber: number): number {
  return (((dayNumber + 3) % 7) + 7) % 7;
}

/** The number of the Monday that begins the week of a day (ISO 8601 weeks). */
export function mondayOf(dayNumber: number): number {
  return dayNumber - weekdayIndex(dayNumber);
}

/** The number of a day. */
export function numberOf(day: Temporal.PlainDate): number {
  return FIRST.until(day, { largestUnit: 'days' }).days;
}

const texts = new Map<number, string>();
const FIRST = Temporal.PlainDate.from('1970-01-01');

/** A day by its number, as `2026-03-14`. */
export function dayText(dayNumber: number): string {
  const seen = texts.get(dayNumber);
  if (seen !== undefined) return seen;
  const text = FIRST.add({ days: dayNumber }).toString();
  texts.set(dayNumber, text);
  return text;
}
