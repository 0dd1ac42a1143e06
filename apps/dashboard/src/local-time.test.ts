import { describe, expect, test } from 'vitest';
import { clockOf, dayOf, todayIn, zoneOf } from './local-time.ts';

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

test('today is a day of the calendar at the place', () => {
  expect(todayIn('Pacific/Auckland')).toMatch(/^\d{4}-\d\d-\d\d$/);
});
