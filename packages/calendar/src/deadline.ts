// Notice is read as a deadline: the last instant at which a word still comes in time, on the place's own clock.

import { Temporal } from 'temporal-polyfill';

/**
 * How far ahead word must come.
 * `hours` are elapsed hours; `days` are calendar days of the place (the whole day counts, whatever the hour);
 * `working-days` are Mondays to Fridays that are not holidays; `clock` is a time of day some days before.
 */
export type Notice =
  | { readonly by: 'hours'; readonly before: number }
  | { readonly by: 'days'; readonly before: number }
  | { readonly by: 'working-days'; readonly before: number }
  | { readonly by: 'clock'; readonly before: number; readonly time: string };

/** Which side the boundary is on: word at exactly the deadline is `in-time` or `too-late`. */
export type Boundary = 'in-time' | 'too-late';

/** Holidays are days of the place, given as `2026-12-25`; they only matter to working days. */
export type Holidays = ReadonlySet<string>;

/**
 * The instant at which notice runs out for something that starts at `start`, in the zone of `start`.
 * For whole days this is the midnight that ends the last day in time, so it is itself always too late.
 */
export function deadline(
  notice: Notice,
  start: Temporal.ZonedDateTime,
  holidays: Holidays,
): Temporal.ZonedDateTime {
  switch (notice.by) {
    case 'hours':
      return start.subtract({ minutes: Math.round(notice.before * 60) });
    case 'days':
      return dayAfter(start.toPlainDate().subtract({ days: notice.before }), start);
    case 'working-days':
      return dayAfter(workingDaysBefore(start.toPlainDate(), notice.before, holidays), start);
    case 'clock':
      return start
        .toPlainDate()
        .subtract({ days: notice.before })
        .toZonedDateTime({ timeZone: start.timeZoneId, plainTime: Temporal.PlainTime.from(notice.time) });
  }
}

/** Whether word at `at` is in time for something that starts at `start`. */
export function inTime(
  at: Temporal.ZonedDateTime,
  start: Temporal.ZonedDateTime,
  terms: { notice: Notice; boundary: Boundary; holidays: Holidays },
): boolean {
  const last = deadline(terms.notice, start, terms.holidays);
  const order = Temporal.ZonedDateTime.compare(at, last);
  if (order !== 0) return order < 0;
  const wholeDays = terms.notice.by === 'days' || terms.notice.by === 'working-days';
  return !wholeDays && terms.boundary === 'in-time';
}

function dayAfter(day: Temporal.PlainDate, like: Temporal.ZonedDateTime): Temporal.ZonedDateTime {
  return day.add({ days: 1 }).toZonedDateTime(like.timeZoneId);
}

function workingDaysBefore(day: Temporal.PlainDate, count: number, holidays: Holidays): Temporal.PlainDate {
  let left = count;
  let at = day;
  while (left > 0) {
    at = at.subtract({ days: 1 });
    if (at.dayOfWeek < 6 && !holidays.has(at.toString())) left -= 1;
  }
  return at;
}
