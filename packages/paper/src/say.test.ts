import { Temporal } from '@colla/calendar';
import { expect, test } from 'vitest';
import { sayFor } from './say.ts';

const day = Temporal.PlainDate.from('2026-03-14');

test.each([
  ['en-GB', '14 March 2026', '14 Mar 2026'],
  ['en-US', 'March 14, 2026', 'Mar 14, 2026'],
  ['pl-PL', '14 marca 2026', '14 mar 2026'],
])('a day is said as %s has it', (locale, long, short) => {
  const say = sayFor(locale);
  expect([say.day(day), say.shortDay(day)]).toEqual([long, short]);
});

test('the first day of a year is the same day in every zone', () => {
  expect(sayFor('en-GB').day(Temporal.PlainDate.from('2027-01-01'))).toBe('1 January 2027');
});

test.each([
  [75, 60, 'en-GB', '1.25'],
  [70, 60, 'en-GB', '1.1667'],
  [75, 60, 'de-DE', '1,25'],
  [61_111, 1000, 'en-GB', '61.111'],
  [3, 1, 'ar-EG', '3'],
])('%i of %i is said in %s as %s', (count, of, locale, expected) => {
  expect(sayFor(locale).quantity({ count, of })).toBe(expected);
});

test('a share of 1750 basis points is 17.5 %', () => {
  expect(sayFor('en-GB').share(1750)).toBe('17.5\u00a0%');
});
