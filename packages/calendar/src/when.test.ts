// When a call is, on the clock of its place.

import { granted } from '@colla/refusal';
import { expect, it } from 'vitest';
import { dayNumber } from './day-number.ts';
import { span } from './span.ts';
import { whenOf } from './when.ts';

it.each([
  ['an evening in London', '2026-03-14', '19:30', '21:00', 'Europe/London', 'saturday', 1170, 90],
  [
    'the same evening in Auckland is that day there',
    '2026-03-14',
    '19:30',
    '21:00',
    'Pacific/Auckland',
    'saturday',
    1170,
    90,
  ],
  [
    'midnight belongs to the day it begins',
    '2026-03-15',
    '00:00',
    '00:30',
    'America/Chicago',
    'sunday',
    0,
    30,
  ],
  [
    'a night in which clocks go forward is an hour shorter',
    '2026-03-29',
    '00:30',
    '03:00',
    'Europe/London',
    'sunday',
    30,
    90,
  ],
  [
    'and one in which they go back an hour longer',
    '2026-10-25',
    '00:30',
    '03:00',
    'Europe/London',
    'sunday',
    30,
    210,
  ],
] as const)('%s', (_, on, from, until, zone, weekday, minuteOfDay, minutes) => {
  const evening = granted(span({ on, from, until, zone }));
  expect(whenOf(evening)).toEqual({
    at: evening.start.epochMilliseconds,
    dayNumber: dayNumber(on),
    weekday,
    minuteOfDay,
    minutes,
  });
});
