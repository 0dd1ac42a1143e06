import { Temporal } from '@colla/calendar';
import { cancelCall, type Engagement, playCall, statementUnder } from '@colla/engagements';
import { granted } from '@colla/refusal';
import { expect, it } from 'vitest';
import { byMonth, earnedIn } from './earned.ts';
import { AFTERWARDS, at, BY_THE_HOUR, day, engaged, lasting, organisation } from './engaged.fixture.ts';

const spring = { id: 's1', name: 'Spring', from: day('02-01'), to: day('03-31') };
const now = at('03-20T12:00');

function earned(engagement: Engagement, season = spring) {
  if (!('agreement' in engagement)) throw new Error('nothing is agreed');
  const statement = statementUnder(engagement, engagement.agreement, now, organisation);
  return earnedIn(season, engagement, statement).map(({ month, amount }) => [month.toString(), amount]);
}

const agreed = engaged(BY_THE_HOUR, [
  ['c1', 'rehearsal', '02-02T10:00'],
  ['c2', 'rehearsal', '02-09T10:00'],
  ['c3', 'audition', '03-16T10:00'],
  ['c4', 'audition', '03-30T10:00'],
]);
const played = (of: Engagement, ...ids: readonly string[]) =>
  ids.reduce((so, id) => granted(playCall(so, id, lasting(so, id, 60), AFTERWARDS)), of);

it('what is agreed and not yet played is not earned', () => {
  expect(earned(agreed)).toEqual([]);
});

it('two rehearsals of February and an audition of March at 60.00 are 120.00 and 60.00', () => {
  expect(earned(played(agreed, 'c1', 'c2', 'c3'))).toEqual([
    ['2026-02-01', 12_000n],
    ['2026-03-01', 6_000n],
  ]);
});

it('a call that fell late is earned in the month it was to be in: half of 60.00', () => {
  const fallen = cancelCall(agreed, 'c3', { at: at('03-15T12:00'), by: 'payer', reason: 'other' });
  expect(earned(granted(fallen))).toEqual([['2026-03-01', 3_000n]]);
});

it('what lies outside the season is left to another', () => {
  const march = { ...spring, from: day('03-01') };
  expect(earned(played(agreed, 'c1', 'c3'), march)).toEqual([['2026-03-01', 6_000n]]);
});

it('what is for the whole engagement is earned with its last call, and a cost on its own day', () => {
  const clauses = [
    ...BY_THE_HOUR,
    { id: 'parts', kind: 'fixed', terms: { price: '20.00', each: 'work' } },
    { id: 'costs', kind: 'cost', terms: {} },
  ];
  const of = engaged(clauses, [
    ['c1', 'rehearsal', '02-02T10:00'],
    ['c3', 'audition', '03-16T10:00'],
  ]);
  const cost = { id: 'k1', on: day('02-20'), what: 'Score', amount: 1_200n };
  const part = { state: 'ready', permission: 'not needed' } as const;
  const song = { id: 'w1', composer: 'Anna Bon', title: 'Song', minutes: 4, requested: false, part };
  const spent = { ...of, costs: [cost], programme: [song] };
  expect(earned(played(spent, 'c1'))).toEqual([['2026-02-01', 7_200n]]);
  expect(earned(played(spent, 'c1', 'c3'))).toEqual([
    ['2026-02-01', 7_200n],
    ['2026-03-01', 8_000n],
  ]);
});

it('months come in order, and within one the engagements by title', () => {
  const earning = (title: string, month: string) => ({
    engagement: title,
    title,
    month: Temporal.PlainDate.from(month),
    currency: agreed.currency,
    amount: 1n,
    keys: [],
  });
  const mixed = [
    earning('Songs', '2026-03-01'),
    earning('Émile', '2026-03-01'),
    earning('Zoë', '2026-02-01'),
  ];
  expect(byMonth(mixed, 'en').map(({ title }) => title)).toEqual(['Zoë', 'Émile', 'Songs']);
});
