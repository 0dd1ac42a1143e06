// A season: a named span of days by which work and money are summed.

import { type OrRefusal, Refusal } from '@colla/refusal';
import { Temporal } from 'temporal-polyfill';

/** A term, a concert season, a year: both days belong to it. */
export interface Season {
  readonly id: string;
  readonly name: string;
  readonly from: Temporal.PlainDate;
  readonly to: Temporal.PlainDate;
}

/** A season whose last day is not before its first; refuses one that is, or one longer than two years. */
export function season(of: Season): OrRefusal<Season> {
  if (Temporal.PlainDate.compare(of.to, of.from) < 0) {
    return new Refusal(
      'calendar/season-ends-early',
      `${of.name} ends before it begins. Correct one of its two days.`,
      {},
      '/to',
    );
  }
  if (of.from.until(of.to).days > 731) {
    return new Refusal(
      'calendar/season-too-long',
      `${of.name} is longer than two years. Make two seasons of it.`,
      {},
      '/to',
    );
  }
  return of;
}

/** Whether a day falls within the season. */
export function inSeason(day: Temporal.PlainDate, { from, to }: Season): boolean {
  return Temporal.PlainDate.compare(day, from) >= 0 && Temporal.PlainDate.compare(day, to) <= 0;
}

/** The Monday that begins the week of a day (ISO 8601 weeks). */
export function weekOf(day: Temporal.PlainDate): Temporal.PlainDate {
  return day.subtract({ days: day.dayOfWeek - 1 });
}

/** The Mondays of every week a season touches, in order. */
export function weeksOf({ from, to }: Season): Temporal.PlainDate[] {
  const weeks: Temporal.PlainDate[] = [];
  for (let week = weekOf(from); Temporal.PlainDate.compare(week, to) <= 0; week = week.add({ days: 7 }))
    weeks.push(week);
  return weeks;
}
