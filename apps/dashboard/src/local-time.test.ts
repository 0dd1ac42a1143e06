import { describe, expect, test } from 'vitest';
import { clockOf, dayAt, dayNumber, dayOf, mondayOf, todayIn, zoneOf } from './local-time.ts';

const evening = '2026-10-24T23:30:00+01:00[Europe/London]';

describe('an instant', () => {
  test('says the day, the clock and the zone of its own place', () => {
    expect([dayOf(evening), clockOf(evening), zoneOf(evening)]).toEqual([
      '2026-10-24',
      1410,
      'Europe/London',
    ]);
  });
});

describe('days', () => {
  test('are counted from 1970-01-01 and back', () => {
    expect([dayNumber('1970-01-01'), dayNumber('2026-08-31'), dayAt(20_696)]).toEqual([
      0,
      20_696,
      '2026-08-31',
    ]);
  });

  test.each([
    ['2026-08-31', '2026-08-31'],
    ['2026-09-06', '2026-08-31'],
    ['2026-09-07', '2026-09-07'],
    ['1969-12-31', '1969-12-29'],
    ['1969-12-21', '1969-12-15'],
  ])('of the week of %s the Monday is %s', (day, monday) => {
    expect(dayAt(mondayOf(dayNumber(day)))).toBe(monday);
  });
});

test('today is a day of the calendar at the place', () => {
  expect(todayIn('Pacific/Auckland')).toMatch(/^\d{4}-\d\d-\d\d$/);
});
