// Calls as a person writes them: the day and clock times of the place.

import { comesTwice, localTime, type Span, Temporal, type WrittenSpan } from '@colla/calendar';
import type { Call } from '@colla/hours';
import { refused } from '@colla/refusal';

/** A span in the clock times of its place; the day it ends is named only where it is another. */
export function writeSpan({ start, end }: Span): WrittenSpan {
  const [on, untilOn] = [start, end].map((at) => at.toPlainDate().toString());
  return {
    on: on ?? '',
    from: clock(start),
    until: clock(end),
    ...(untilOn === on ? {} : { untilOn }),
    zone: start.timeZoneId,
    ...(isAgain(start) ? { fromAgain: true } : {}),
    ...(isAgain(end) ? { untilAgain: true } : {}),
  };
}

/** Whether it is the second of two like times, in the night when clocks go back. */
function isAgain(at: Temporal.ZonedDateTime): boolean {
  const on = at.toPlainDate().toString();
  if (!comesTwice(on, clock(at), at.timeZoneId)) return false;
  const first = localTime(on, clock(at), at.timeZoneId);
  return !refused(first) && !first.equals(at);
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
 * The same times with the end moved by some minutes: the three taps after a rehearsal that ran over. As they are where
 * the end cannot be read.
 */
export function endMoved(span: WrittenSpan, minutes: number): WrittenSpan {
  const { on, until, untilOn, untilAgain, ...kept } = span;
  const end = localTime(untilOn ?? on, until, span.zone, { again: untilAgain });
  if (refused(end)) return span;
  const moved = end.add({ minutes });
  const day = moved.toPlainDate().toString();
  return {
    ...kept,
    on,
    until: clock(moved),
    ...(day === on ? {} : { untilOn: day }),
    ...(isAgain(moved) ? { untilAgain: true } : {}),
  };
}
