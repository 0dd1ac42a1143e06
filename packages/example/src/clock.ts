// The calendar of the telling: weeks counted from the week of `now`, at the place where the season is set.

import { type Span, Temporal, weekOf } from '@colla/calendar';
import type { ToldDay, Weekday } from './told.ts';

const WEEKDAYS: Readonly<Record<Weekday, number>> = {
  mon: 0,
  tue: 1,
  wed: 2,
  thu: 3,
  fri: 4,
  sat: 5,
  sun: 6,
};

/** Turns what is told into days and instants. */
export interface Clock {
  readonly now: Temporal.ZonedDateTime;
  readonly day: (told: ToldDay) => Temporal.PlainDate;
  readonly at: (told: ToldDay, time: string) => Temporal.ZonedDateTime;
  readonly span: (told: { on: ToldDay; from: string; minutes: number }) => Span;
  readonly daysAgo: (days: number) => Temporal.PlainDate;
  readonly isPast: (instant: Temporal.ZonedDateTime) => boolean;
}

/** The clock of a telling at `now`, which is read in the zone it comes with. */
export function clockAt(now: Temporal.ZonedDateTime): Clock {
  const today = now.toPlainDate();
  const monday = weekOf(today);
  const day = ([week, weekday]: ToldDay) => monday.add({ days: 7 * week + WEEKDAYS[weekday] });
  const at = (told: ToldDay, time: string) =>
    day(told).toZonedDateTime({ timeZone: now.timeZoneId, plainTime: Temporal.PlainTime.from(time) });
  return {
    now,
    day,
    at,
    span: ({ on, from, minutes }) => {
      const start = at(on, from);
      return { start, end: start.add({ minutes }) };
    },
    daysAgo: (days) => today.subtract({ days }),
    isPast: (instant) => Temporal.ZonedDateTime.compare(instant, now) <= 0,
  };
}
