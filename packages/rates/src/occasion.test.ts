// How often something is owed: calls sorted into days, weeks and months of their place.

import { currency } from '@colla/money';
import { granted } from '@colla/refusal';
import { expect, it } from 'vitest';
import { given } from './given.ts';
import { type Each, occasions } from './occasion.ts';

// 1 March 2026 is a Sunday, so the Monday after it begins a week and not a month.
const { calls } = given(
  {
    calls: [
      'rehearsal 60 on 2026-02-28 at 10:00',
      'rehearsal 60 on 2026-03-01 at 10:00',
      'rehearsal 60 on 2026-03-01 at 18:00',
      'rehearsal 60 on 2026-03-02 at 10:00',
    ],
  },
  granted(currency('GBP')),
);

it.each<[Each, number[]]>([
  ['call', [1, 1, 1, 1]],
  ['day', [1, 2, 1]],
  ['week', [3, 1]],
  ['month', [1, 3]],
  ['engagement', [4]],
])('four calls about the first of March, for each %s', (each, counts) => {
  expect(occasions(calls, each, (call) => call, {}).map(({ of }) => of.length)).toEqual(counts);
});

it('a late call belongs to the day of its place, not to that of Greenwich', () => {
  const late = given(
    {
      zone: 'America/New_York',
      calls: ['recital 60 on 2026-03-01 at 23:00', 'recital 60 on 2026-03-02 at 10:00'],
    },
    granted(currency('USD')),
  ).calls;
  expect(occasions(late, 'day', (call) => call, {}).map(({ about }) => about)).toEqual([
    '2026-03-01',
    '2026-03-02',
  ]);
});
