// Two calls at once, across engagements.

import { readInstant } from '@colla/calendar';
import { granted } from '@colla/refusal';
import type { MarkJson } from '@colla/wire';
import { describe, expect, it } from 'vitest';
import { busyNear, clashing, seasonOf } from './clash.ts';

const jury: MarkJson = {
  call: 'c1',
  engagement: 'e1',
  title: 'Juries',
  kind: 'jury',
  place: 'Hall',
  start: '2026-03-07T14:00:00+00:00[Europe/London]',
  end: '2026-03-07T15:30:00+00:00[Europe/London]',
  minutes: 90,
  is: 'agreed',
};

const onStave = (...marks: MarkJson[]) => [
  { party: 'p1', name: 'Hall', marks, engagements: 1, toInvoice: 0, overdue: 0, money: [], owing: [] },
];

const times = (from: string, until: string, zone = 'Europe/London') => ({
  start: granted(readInstant(`2026-03-07T${from}:00[${zone}]`)),
  end: granted(readInstant(`2026-03-07T${until}:00[${zone}]`)),
});

describe('a rehearsal on the day of a jury from 14:00 to 15:30 in London', () => {
  const busy = busyNear('2026-03-07', onStave(jury), 'e2');

  it.each([
    ['13:00', '14:00', 0],
    ['13:00', '14:01', 1],
    ['14:30', '15:00', 1],
    ['15:30', '16:30', 0],
  ])('from %s to %s is at the same time as so many others: %i', (from, until, others) => {
    expect(clashing(times(from, until), busy)).toHaveLength(others);
  });

  it('is at the same time from 15:00 in Berlin, where the clock is an hour ahead', () => {
    const [clash] = clashing(times('15:00', '15:30', 'Europe/Berlin'), busy);
    expect(clash?.what).toContain('“Juries”');
  });
});

it('a call that fell takes nobody’s time, nor does one of the same engagement, nor one a month off', () => {
  const fallen = onStave({ ...jury, is: 'cancelled' }, { ...jury, is: 'missed' });
  expect(busyNear('2026-03-07', fallen, 'e2')).toEqual([]);
  expect(busyNear('2026-03-07', onStave(jury), 'e1')).toEqual([]);
  expect(busyNear('2026-04-07', onStave(jury), 'e2')).toEqual([]);
});

it('a day is looked up in the shortest season that has it', () => {
  const season = (name: string, from: string, to: string) => ({ id: name, name, from, to });
  const seasons = [
    season('autumn', '2025-09-01', '2025-12-20'),
    season('the year', '2025-09-01', '2026-08-31'),
    season('spring', '2026-01-10', '2026-04-01'),
  ];
  expect(seasonOf('2026-03-07', seasons)?.name).toBe('spring');
  expect(seasonOf('2026-06-07', seasons)?.name).toBe('the year');
  expect(seasonOf('2027-06-07', seasons)).toBeUndefined();
});
