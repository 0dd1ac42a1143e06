// Days as numbers, against the calendar itself.

import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { dayAt, dayNumber, mondayOf, WEEKDAYS, weekdayOf, weekWithin } from './day-number.ts';

const first = Temporal.PlainDate.from('1970-01-01');
const anyDay = fc.integer({ min: -25_567, max: 84_371 });

describe('the number of a day', () => {
  it.each([
    ['1970-01-01', 0],
    ['1969-12-31', -1],
    // 56 years of 365 days, and the leap days of 1972 to 2024, fourteen: 20,454; then 31 + 28 + 13 days
    ['2026-03-14', 20_526],
    ['2000-02-29', 11_016],
    ['2000-03-01', 11_017],
  ])('of %s is %i, and back', (day, number) => {
    expect([dayNumber(day), dayAt(number)]).toEqual([number, day]);
  });

  it('is that of the calendar, from 1900 until 2200', () => {
    fc.assert(
      fc.property(anyDay, (number) => {
        const day = first.add({ days: number }).toString();
        expect([dayAt(number), dayNumber(day)]).toEqual([day, number]);
      }),
    );
  });
});

describe('a week', () => {
  it.each([
    ['2026-08-31', '2026-08-31', 'monday'],
    ['2026-09-06', '2026-08-31', 'sunday'],
    ['2026-09-07', '2026-09-07', 'monday'],
    ['1970-01-01', '1969-12-29', 'thursday'],
    ['1969-12-21', '1969-12-15', 'sunday'],
  ])('of %s begins on %s, and the day is a %s of it', (day, monday, weekday) => {
    const number = dayNumber(day);
    expect([dayAt(mondayOf(number)), weekdayOf(number)]).toEqual([monday, weekday]);
  });

  it('has the weekdays of the calendar', () => {
    fc.assert(
      fc.property(anyDay, (number) => {
        const { dayOfWeek } = first.add({ days: number });
        expect(weekdayOf(number)).toBe(WEEKDAYS[dayOfWeek - 1]);
      }),
    );
  });

  it.each([
    ['the day itself', '2026-09-02', 1],
    ['the Sunday after a first day that is a Wednesday', '2026-09-06', 1],
    ['the Monday after', '2026-09-07', 2],
    ['the day before the week it began in', '2026-08-30', 0],
  ])('counts from the week of the first day, a Wednesday: %s', (_, day, week) => {
    expect(weekWithin(dayNumber(day), dayNumber('2026-09-02'))).toBe(week);
  });
});
