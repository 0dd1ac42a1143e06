// Calls as a person writes them: the day and clock times of the place.

import { type Span, Temporal, type WrittenSpan } from '@colla/calendar';
import type { Call } from '@colla/hours';

/** A span in the clock times of its place; the day it ends is named only where it is another. */
export function writeSpan({ start, end }: Span): WrittenSpan {
  const [on, untilOn] = [start, end].map((at) => at.toPlainDate().toString());
  return {
    on: on ?? '',
    from: clock(start),
    until: clock(end),
    ...(untilOn === on ? {} : { untilOn }),
    zone: start.timeZoneId,
  };
}

/** A time of day, `19:30`. */
export function clock(at: Temporal.ZonedDateTime): string {
  return at.toPlainTime().toString({ smallestUnit: 'minute' });
}

/**
 * A span whose end runs past midnight where it is not after the start: people who write 22:00 to 00:30 mean
 * the next day. An end more than twelve hours off is taken for a slip and left as it is.
 */
export function pastMidnight(span: WrittenSpan): WrittenSpan {
  if (span.untilOn !== undefined || span.until > span.from || !isClock(span.until) || !isClock(span.from)) {
    return span;
  }
  const minutes = 24 * 60 - minutesInto(span.from) + minutesInto(span.until);
  if (minutes > 12 * 60 || !/^\d{4}-\d\d-\d\d$/.test(span.on)) return span;
  return { ...span, untilOn: Temporal.PlainDate.from(span.on).add({ days: 1 }).toString() };
}

function isClock(text: string): boolean {
  return /^([01]\d|2[0-3]):[0-5]\d$/.test(text);
}

function minutesInto(clock: string): number {
  const [hours = 0, minutes = 0] = clock.split(':').map(Number);
  return hours * 60 + minutes;
}

/** The times offered for a call that took place: as planned, or as they were said before. */
export function offeredTimes(call: Call): WrittenSpan {
  return writeSpan(call.standing.is === 'played' ? call.standing.times : call.planned);
}

/**
 * The same times with the end moved by some minutes: the three taps after a rehearsal that ran over. Nothing where
 * clocks go back and the new end is the second of two like times: written down, it would be read as the first.
 */
export function endMoved(span: WrittenSpan, minutes: number): WrittenSpan | undefined {
  const end = atPlace(span.untilOn ?? span.on, span.until, span.zone).add({ minutes });
  const untilOn = end.toPlainDate().toString();
  if (!atPlace(untilOn, clock(end), span.zone).equals(end)) return undefined;
  const { untilOn: _, ...kept } = span;
  return { ...kept, until: clock(end), ...(untilOn === span.on ? {} : { untilOn }) };
}

/** A day and time as they are read there: of two like times, the first. */
function atPlace(on: string, at: string, zone: string): Temporal.ZonedDateTime {
  return Temporal.PlainDate.from(on).toPlainDateTime(Temporal.PlainTime.from(at)).toZonedDateTime(zone);
}
