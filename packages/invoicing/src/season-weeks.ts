// The hours of a season by week: those the books draw, and those of whatever part of them a reader looks at.

import { dayAt, dayNumber, mondayOf } from '@colla/calendar';
import type { Standing } from '@colla/hours';

/** Minutes of one week, by how the calls stand, and by stave. `monday` is the day that begins it. */
export interface WeekOfHours {
  readonly monday: string;
  readonly played: number;
  readonly agreed: number;
  readonly held: number;
  readonly byStave: Readonly<Record<string, number>>;
}

interface Marked {
  readonly is: Standing['is'];
  readonly minutes: number;
}

/**
 * The minutes of each of these weeks, by their Mondays. A call belongs to the week of its own place's day (`dayOf`);
 * one that fell takes no hours, and one outside the weeks is left out.
 */
export function hoursByWeek<Mark extends Marked>(
  mondays: readonly string[],
  staves: readonly { readonly party: string; readonly marks: readonly Mark[] }[],
  dayOf: (mark: Mark) => string,
): WeekOfHours[] {
  const weeks = new Map(mondays.map((monday) => [monday, emptyWeek(monday)]));
  for (const { party, marks } of staves) {
    for (const mark of marks) {
      const week = weeks.get(dayAt(mondayOf(dayNumber(dayOf(mark)))));
      if (!week || mark.is === 'cancelled' || mark.is === 'missed') continue;
      week[mark.is] += mark.minutes;
      week.byStave[party] = (week.byStave[party] ?? 0) + mark.minutes;
    }
  }
  return [...weeks.values()];
}

function emptyWeek(monday: string) {
  return { monday, played: 0, agreed: 0, held: 0, byStave: {} as Record<string, number> };
}
