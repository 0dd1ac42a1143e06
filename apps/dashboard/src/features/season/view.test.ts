import { describe, expect, test } from 'vitest';
import { inView, minutesIn, type StaveJson, WHOLE_VIEW, weeksInView } from './view.ts';

const call = (
  start: string,
  minutes: number,
  is: StaveJson['marks'][number]['is'],
  kind = 'lesson' as const,
) => ({
  call: start,
  engagement: 'e',
  title: 'Lessons',
  kind,
  place: 'Room 4',
  start: `${start}:00+01:00[Europe/London]`,
  end: `${start}:00+01:00[Europe/London]`,
  minutes,
  is,
});

const stave = (party: string, marks: StaveJson['marks']): StaveJson => ({
  party,
  name: party,
  marks,
  engagements: 1,
  toInvoice: 0,
  overdue: 0,
  money: [],
  owing: [],
});

const staves = [
  stave('aldbury', [call('2026-09-06T23:30', 30, 'played'), call('2026-09-07T09:00', 60, 'agreed')]),
  stave('brackwater', [call('2026-09-09T09:00', 45, 'held'), call('2026-09-10T09:00', 600, 'cancelled')]),
];
const mondays = ['2026-08-31', '2026-09-07'];

describe('the hours of a week', () => {
  const [first, second] = weeksInView(staves, mondays);

  test('belong to the week of the place’s own day: late on Sunday is still the old week', () => {
    expect(first).toMatchObject({ played: 30, agreed: 0, held: 0 });
  });

  test('are told by standing and by institution', () => {
    expect(second).toEqual({
      monday: '2026-09-07',
      played: 0,
      agreed: 60,
      held: 45,
      byStave: { aldbury: 60, brackwater: 45 },
    });
  });

  test('leave out what was cancelled', () => {
    expect(second && minutesIn(second)).toBe(105);
  });
});

describe('a view of the season', () => {
  test('with nothing chosen is the whole season', () => {
    expect(inView(staves, WHOLE_VIEW)).toEqual(staves);
  });

  test('of what is held leaves out a stave without any', () => {
    expect(inView(staves, { ...WHOLE_VIEW, is: 'held' }).map(({ party }) => party)).toEqual(['brackwater']);
  });

  test('of one institution shows its stave alone', () => {
    expect(inView(staves, { ...WHOLE_VIEW, party: 'aldbury' }).map(({ party }) => party)).toEqual([
      'aldbury',
    ]);
  });
});
