// How much of a night lies within some hours of the day, also when clocks change.

import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { minutesWithin } from './window.ts';

it.each<[string, string, number, { from: string; until: string }, number]>([
  [
    'an evening from 17:00 to 20:00 has two hours after six',
    '2026-03-02T17:00',
    180,
    { from: '18:00', until: '23:00' },
    120,
  ],
  ['one that ends by six has none', '2026-03-02T16:00', 120, { from: '18:00', until: '23:00' }, 0],
  [
    'one past eleven has only those until eleven',
    '2026-03-02T22:00',
    120,
    { from: '18:00', until: '23:00' },
    60,
  ],
  ['a night past midnight counts on', '2026-03-02T23:00', 180, { from: '22:00', until: '01:00' }, 120],
  [
    'a call after midnight is in the night before it',
    '2026-03-03T00:30',
    60,
    { from: '22:00', until: '01:00' },
    30,
  ],
  ['a day and a half has two evenings', '2026-03-02T12:00', 36 * 60, { from: '18:00', until: '19:00' }, 120],
])('%s', (_, start, long, hours, within) => {
  const from = Temporal.ZonedDateTime.from(`${start}[Europe/London]`);
  expect(minutesWithin(hours, { start: from, end: from.add({ minutes: long }) })).toBe(within);
});

describe('a night when clocks change', () => {
  it.each([
    [
      'has two hours until three when they go forward',
      '2026-03-28T23:00[Europe/London]',
      '2026-03-29T04:00[Europe/London]',
      '00:00',
      '03:00',
      120,
    ],
    [
      'has four hours until three when they go back',
      '2026-10-31T23:00[America/Chicago]',
      '2026-11-01T04:00[America/Chicago]',
      '00:00',
      '03:00',
      240,
    ],
  ])('%s', (_, start, end, from, until, minutes) => {
    const span = { start: Temporal.ZonedDateTime.from(start), end: Temporal.ZonedDateTime.from(end) };
    expect(minutesWithin({ from, until }, span)).toBe(minutes);
  });
});
