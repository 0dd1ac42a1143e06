// A span of time at a place: what a diary entry says, made exact.

import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import { Temporal } from 'temporal-polyfill';
import { zone } from './zone.ts';

/** From one instant to a later one, both read in the place's zone. `end` is after `start`. */
export interface Span {
  readonly start: Temporal.ZonedDateTime;
  readonly end: Temporal.ZonedDateTime;
}

/** A span as a person writes it: local day and times at the place. `untilOn` is the end's day when it is not `on`. */
export interface WrittenSpan {
  readonly on: string;
  readonly from: string;
  readonly until: string;
  readonly untilOn?: string | undefined;
  readonly zone: string;
  /** True where the second of two like times is meant, in the night when clocks go back. */
  readonly fromAgain?: boolean | undefined;
  readonly untilAgain?: boolean | undefined;
}

/**
 * Reads a written span. Refuses an unknown zone, a day or time that is none, a time that clocks skip that
 * night, an end that is not after the start, and more than two days: that is a day written wrong. A time that clocks
 * repeat is read as the first of the two unless the second is asked for.
 */
export function span(written: WrittenSpan): OrRefusal<Span> {
  const start = localTime(written.on, written.from, written.zone, { again: written.fromAgain });
  if (refused(start)) return start.at(fieldOf(start, { day: '/on', time: '/from' }));
  const endsOn = written.untilOn ?? written.on;
  const end = localTime(endsOn, written.until, written.zone, { again: written.untilAgain });
  if (refused(end)) return end.at(fieldOf(end, { day: '/untilOn', time: '/until' }));
  if (Temporal.ZonedDateTime.compare(end, start) <= 0) return endsBeforeItStarts(written);
  if (minutesOf({ start, end }) > LONGEST_MINUTES) return tooLong(written);
  return { start, end };
}

/** No call lasts longer than two days. */
const LONGEST_MINUTES = 48 * 60;

function fieldOf({ code }: Refusal, fields: { day: string; time: string }): string {
  if (code === 'calendar/unknown-zone') return '/zone';
  return code === 'calendar/no-such-day' ? fields.day : fields.time;
}

/**
 * Local day and time at a place as an instant with its zone; `again` where the clock shows it twice and the second time
 * is meant. Refuses what the clock there does not show.
 */
export function localTime(
  on: string,
  at: string,
  zoneName: string,
  { again = false }: { readonly again?: boolean | undefined } = {},
): OrRefusal<Temporal.ZonedDateTime> {
  const place = zone(zoneName);
  if (refused(place)) return place;
  const day = readDay(on);
  if (refused(day)) return day;
  const time = readTime(at);
  if (refused(time)) return time;
  const local = day.toPlainDateTime(time);
  const read = local.toZonedDateTime(place, { disambiguation: again ? 'later' : 'compatible' });
  if (!read.toPlainDateTime().equals(local)) return skipped(on, at, place, read);
  return read;
}

/** Whether the clock of a place shows a time twice on a day: in the night when clocks go back. */
export function comesTwice(on: string, at: string, zoneName: string): boolean {
  const [first, second] = [false, true].map((again) => localTime(on, at, zoneName, { again }));
  if (first === undefined || second === undefined || refused(first) || refused(second)) return false;
  return !first.equals(second);
}

/** The years in which days are read: beyond them a year is a slip of the hand. */
const FIRST_YEAR = 1900;
const LAST_YEAR = 2200;

/** Reads a day such as `2026-03-14`; refuses 30 February, and a year before 1900 or after 2200. */
export function readDay(text: string): OrRefusal<Temporal.PlainDate> {
  try {
    if (/^\d{4}-\d\d-\d\d$/.test(text)) {
      const day = Temporal.PlainDate.from(text, { overflow: 'reject' });
      return isOurTime(day.year) ? day : yearOutOfReach(text);
    }
  } catch {
    // falls through to the one refusal for days
  }
  return new Refusal(
    'calendar/no-such-day',
    `“${text}” is not a day. Write it as year-month-day, such as 2026-03-14.`,
    {
      day: text,
    },
  );
}

function isOurTime(year: number): boolean {
  return year >= FIRST_YEAR && year <= LAST_YEAR;
}

function yearOutOfReach(text: string): Refusal {
  return new Refusal(
    'calendar/no-such-day',
    `“${text}” is not between ${FIRST_YEAR} and ${LAST_YEAR}. Check the year.`,
    { day: text },
  );
}

/** Reads a time of day such as `19:30`. */
export function readTime(text: string): OrRefusal<Temporal.PlainTime> {
  if (/^([01]\d|2[0-3]):[0-5]\d$/.test(text)) return Temporal.PlainTime.from(text);
  return new Refusal(
    'calendar/no-such-time',
    `“${text}” is not a time of day. Write it as hours and minutes, such as 19:30.`,
    {
      time: text,
    },
  );
}

/** Elapsed whole minutes of a span: by the instants, so a night when clocks change counts as it was lived. */
export function minutesOf({ start, end }: Span): number {
  return Math.round((end.epochMilliseconds - start.epochMilliseconds) / 60_000);
}

/**
 * Reads an instant written with its zone (RFC 9557, `2026-03-14T10:00:00+00:00[Europe/London]`); the offset says
 * which instant, the zone how it is shown. Refuses what is none, a zone that is a bare offset, and a year before
 * 1900 or after 2200.
 */
export function readInstant(text: string): OrRefusal<Temporal.ZonedDateTime> {
  try {
    const read = Temporal.ZonedDateTime.from(text, { offset: 'use' });
    const place = zone(read.timeZoneId);
    if (refused(place)) return place;
    return isOurTime(read.year) ? read : yearOutOfReach(text);
  } catch {
    return new Refusal(
      'calendar/no-such-instant',
      `“${text}” is not a time with its place. Write it as 2026-03-14T10:00:00+00:00[Europe/London].`,
      { text },
    );
  }
}

function skipped(on: string, at: string, place: string, next: Temporal.ZonedDateTime): Refusal {
  const clock = next.toPlainTime().toString({ smallestUnit: 'minute' });
  return new Refusal(
    'calendar/skipped-time',
    `${at} on ${on} does not exist in ${place}: clocks go forward that night. Did you mean ${clock}?`,
    { day: on, time: at, zone: place, suggestion: clock },
  );
}

function tooLong({ on, untilOn = on }: WrittenSpan): Refusal {
  return new Refusal(
    'calendar/too-long',
    `From ${on} to ${untilOn} is more than two days. Enter a call for each time, or correct the day it ends on.`,
    { start: on, end: untilOn },
    '/untilOn',
  );
}

function endsBeforeItStarts({ on, from, until, untilOn }: WrittenSpan): Refusal {
  return new Refusal(
    'calendar/ends-before-it-starts',
    `It ends at ${until}${untilOn ? ` on ${untilOn}` : ''}, which is not after its start at ${from} on ${on}. ` +
      'Correct the end, or give the day it ends on if it runs past midnight.',
    { start: from, end: until },
    '/until',
  );
}
