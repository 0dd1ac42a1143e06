// Minutes that lie within some hours of the day, on the clock of the place.

import { Temporal } from '@colla/calendar';
import { expect, it } from 'vitest';
import { minutesWithin } from './dimension.ts';

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
