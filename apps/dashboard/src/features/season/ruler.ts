// The ruler of the season score: where an instant stands from left to right, and how high a time of day stands.
import { dayNumber } from '@colla/calendar';
import { clockOf, dayOf } from '../../local-time.ts';

export interface Ruler {
  /** The day number of the first Monday. */
  readonly first: number;
  readonly weeks: number;
  /** Pixels of one week. */
  readonly week: number;
  /** Pixels between two lines of a stave. */
  readonly gap: number;
}

/** The hours that the five lines stand for, from the lowest up; three hours between two lines. */
export const LINE_HOURS = [9, 12, 15, 18, 21] as const;

export function widthOf({ weeks, week }: Ruler): number {
  return weeks * week;
}

/** Height of one stave with the room above and below that early and late calls need. */
export function heightOf({ gap }: Ruler): number {
  return gap * 7;
}

/** Where a day begins. */
export function xOfDay(day: string, { first, week }: Ruler): number {
  return ((dayNumber(day) - first) * week) / 7;
}

export function xOf(instant: string, ruler: Ruler): number {
  return xOfDay(dayOf(instant), ruler) + (clockOf(instant) / 1440) * (ruler.week / 7);
}

/** An hour of playing is drawn as long as a day; what is shorter than a head is drawn as a head. */
export function lengthOf(minutes: number, ruler: Ruler): number {
  return Math.max((minutes / 60) * (ruler.week / 7), headOf(ruler));
}

/** The height of a head: it nearly fills the room between two lines, and is told from a dash where that is small. */
export function headOf({ gap }: Ruler): number {
  return Math.max(gap * 0.76, 4.5);
}

export function yOfLine(line: number, { gap }: Ruler): number {
  return gap * (5.5 - line);
}

/** The morning stands low and the evening high; the small hours stay within the stave's own room. */
export function yOf(instant: string, { gap }: Ruler): number {
  const hour = Math.min(Math.max(clockOf(instant) / 60, 6), 24);
  return gap * (5.5 - (hour - LINE_HOURS[0]) / 3);
}
