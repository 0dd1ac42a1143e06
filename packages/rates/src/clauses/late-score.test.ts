// Music that comes late: hours that are lost, the right to decline, and parts that are still out.

import { describe, expect, it } from 'vitest';
import { pounds, priced, tariffOf } from '../priced.ts';
import { sentencesOf, type WrittenClause } from '../tariff.ts';

const covered: WrittenClause = {
  id: 'covered',
  kind: 'entitlement',
  payer: 'department',
  for: { calls: ['rehearsal'] },
  terms: { minutes: 120 },
};
const hours: WrittenClause = {
  id: 'hours',
  kind: 'hourly',
  for: { calls: ['rehearsal'] },
  payer: 'student',
  terms: { price: '30.00' },
};
const recital: WrittenClause = {
  id: 'recital',
  kind: 'fixed',
  for: { calls: ['recital'] },
  terms: { price: '0' },
};
const music: WrittenClause = {
  id: 'music',
  kind: 'late-score',
  terms: {
    before: 'first call',
    steps: [
      { days: 14, means: { as: 'may decline' } },
      { days: 7, means: { as: 'hours lost', of: ['covered'] } },
    ],
  },
};
const calls = ['rehearsal 120 on 2026-06-10', 'recital 60 on 2026-06-20'];

describe('music wanted two weeks before the first rehearsal', () => {
  const bill = (came: string) =>
    priced([covered, hours, recital, music], { calls, works: [`Sonata, ${came}`] });

  it('that comes then changes nothing', () => {
    const { late, total } = bill('came 2026-05-27');
    expect([late, pounds(total)]).toEqual([[], '0.00']);
  });

  it('that comes four days later may be declined, and the department still covers its hours', () => {
    const { late, total } = bill('came 2026-05-31');
    expect(late).toMatchObject([{ work: 'Sonata', daysLate: 4, means: 'the pianist may decline' }]);
    expect(pounds(total)).toBe('0.00');
  });

  it('that comes in the last week loses those hours: the student pays two at 30.00', () => {
    const { entitlements, payers } = bill('came 2026-06-05');
    expect(entitlements).toMatchObject([
      { used: 0, left: 0, lost: 'Sonata: wanted by 3 June 2026, 2 days late' },
    ]);
    expect(payers.map(({ payer, total }) => [payer, pounds(total)])).toContainEqual(['student', '60.00']);
  });

  it('that is still wanted is late by the day of the statement, and not before', () => {
    const asOf = (day: string) =>
      priced(
        [covered, hours, recital, music],
        { calls, works: ['Sonata, wanted'] },
        `${day}T12:00[Europe/London]`,
      );
    expect(asOf('2026-05-27').late).toEqual([]);
    expect(asOf('2026-05-29').late).toMatchObject([{ daysLate: 2 }]);
  });

  it('of which nobody keeps track is never late', () => {
    expect(priced([covered, hours, recital, music], { calls, works: ['Sonata'] }).late).toEqual([]);
  });
});

it('says by when it is wanted and what follows', () => {
  expect(sentencesOf(tariffOf([covered, music]), 'en-GB')[1]?.sentence).toBe(
    'Music that comes later than 2 weeks before the first call may be declined by the pianist and later than one week before the first call loses the hours of “covered”.',
  );
});

it.each([
  [{ each: 'work' }, 'costs 25.00 more for each work.'],
  [{ each: 'work', most: 1 }, 'costs 25.00 more for each work; no more than once.'],
  [{ each: 'work', most: 3 }, 'costs 25.00 more for each work; no more than 3 times.'],
])('says how often it is charged at most: %j', (terms, said) => {
  const steps = [{ days: 28, means: { as: 'charge', amount: '25.00' } }];
  const clause: WrittenClause = { id: 'music', kind: 'late-score', terms: { steps, ...terms } };
  expect(sentencesOf(tariffOf([clause]), 'en-GB')[0]?.sentence).toBe(
    `Music that comes later than 4 weeks before the performance ${said}`,
  );
});

it('charged once for the engagement cannot be charged so many times at most', () => {
  const steps = [{ days: 28, means: { as: 'charge', amount: '25.00' } }];
  expect(() => tariffOf([{ id: 'music', kind: 'late-score', terms: { steps, most: 3 } }])).toThrow(
    'It is charged once for the engagement: charge it for each work, or leave out how many times at most.',
  );
});

it('cannot lose hours of a clause that is not there', () => {
  expect(() => tariffOf([music])).toThrow('speaks of a clause “covered” that is not in this tariff');
});

describe('music for a recital and music for a jury', () => {
  const before = (kind: string, days: number): WrittenClause => ({
    id: `${kind}-music`,
    kind: 'late-score',
    terms: { before: kind, steps: [{ days, means: { as: 'may decline' } }] },
  });

  it('are wanted each by its own day: nine weeks before the one, five before the other', () => {
    const { late } = priced([recital, hours, before('recital', 63), before('jury', 35)], {
      calls: ['jury 15 on 2026-05-06', 'recital 60 on 2026-06-20'],
      works: ['Sonata, came 2026-04-03'],
    });
    // 63 days before 20 June is 18 April; 35 before 6 May is 1 April
    expect(late.map(({ clause, daysLate }) => [clause, daysLate])).toEqual([['jury-music', 2]]);
  });
});
