// Days as numbers, counted from 1 January 1970, to set days, weeks and weekdays beside one another without a zone.

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

/** The number of a day such as `2026-03-14`; 1 January 1970 is 0. The day must be one: `readDay` has read it. */
export function dayNumber(day: string): number {
  const year = Number(day.slice(0, 4));
  const month = Number(day.slice(5, 7));
  const fromMarch = (month + 9) % 12;
  const began = marchFirst(fromMarch > 9 ? year - 1 : year);
  return began + (BEFORE_MONTH[fromMarch] ?? 0) + Number(day.slice(8, 10)) - 1 - FIRST;
}

/** The day of a number, as `2026-03-14`. */
export function dayAt(number: number): string {
  const count = number + FIRST;
  const guess = Math.floor((count * 400) / DAYS_IN_400_YEARS);
  const year = marchFirst(guess) > count ? guess - 1 : marchFirst(guess + 1) > count ? guess : guess + 1;
  const rest = count - marchFirst(year);
  const fromMarch = BEFORE_MONTH.findLastIndex((before) => before <= rest);
  const [inYear, month] = fromMarch > 9 ? [year + 1, fromMarch - 9] : [year, fromMarch + 3];
  return `${padded(inYear, 4)}-${padded(month, 2)}-${padded(rest - (BEFORE_MONTH[fromMarch] ?? 0) + 1, 2)}`;
}

/** The weekday of a day's number. */
export function weekdayOf(number: number): Weekday {
  return WEEKDAYS[placeInWeek(number)] ?? 'monday';
}

/** The number of the Monday that begins the week of a day (ISO 8601 weeks). */
export function mondayOf(number: number): number {
  return number - placeInWeek(number);
}

/** Which week of a span of days a day is in: 1 in the week of its first day. */
export function weekWithin(number: number, first: number): number {
  return (mondayOf(number) - mondayOf(first)) / 7 + 1;
}

/** 0 for a Monday; 1 January 1970 was a Thursday. */
function placeInWeek(number: number): number {
  return (((number + 3) % 7) + 7) % 7;
}

/**
 * Days from 1 March of the year 0 until 1 March of a year: a year that begins in March has its leap day last, so no
 * month before it shifts. Every fourth year is a leap year, every hundredth is none, every four hundredth is one.
 */
function marchFirst(year: number): number {
  return 365 * year + Math.floor(year / 4) - Math.floor(year / 100) + Math.floor(year / 400);
}

/** Days of a year before each month, from March. */
const BEFORE_MONTH = [0, 31, 61, 92, 122, 153, 184, 214, 245, 275, 306, 337];

const DAYS_IN_400_YEARS = marchFirst(400);

/** Days from 1 March of the year 0 until 1 January 1970. */
const FIRST = marchFirst(1969) + 306;

function padded(figure: number, length: number): string {
  return String(figure).padStart(length, '0');
}
