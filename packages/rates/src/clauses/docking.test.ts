// What a pianist's own absence takes off pay: by what, of which occasion, for which reasons, with what notice.

import { refused } from '@colla/refusal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facts } from '../../dealt/facts.ts';
import { pounds, priced, tariffOf } from '../priced.ts';
import { readTariff, sentencesOf, type WrittenClause } from '../tariff.ts';

const salary: WrittenClause = {
  id: 'salary',
  kind: 'fixed',
  terms: { price: '900.00', each: 'term', what: 'Salary' },
};
const docking = (terms: object, also: Partial<WrittenClause> = {}): WrittenClause => ({
  id: 'docking',
  kind: 'docking',
  ...also,
  terms: { ...terms },
});
const taken = (clauses: WrittenClause[], given: Parameters<typeof priced>[1]) =>
  pounds(
    priced(clauses, given)
      .lines.filter(({ clause }) => clause.startsWith('docking'))
      .reduce((sum, { amount }) => sum + amount, 0n),
  );

// Three calls in the autumn, of which one is missed; two in the spring, one of them missed, of one hour and of three.
const year = {
  terms: ['autumn 2026-09-01 to 2026-12-18', 'spring 2027-01-11 to 2027-04-01'],
  calls: [
    'class 60 on 2026-09-07',
    'class 60 on 2026-10-05',
    'class 60 on 2026-11-02',
    'class 60 on 2027-01-18',
    'class 180 on 2027-02-01',
  ],
  fallen: [
    { call: 1, at: '2026-10-01T10:00', by: 'pianist' as const, reason: 'illness' as const },
    { call: 4, by: 'pianist' as const },
  ],
};

describe('an absence takes off', () => {
  it.each<[string, object, string]>([
    [
      'a sum once for each week in which calls are missed: 2 × 25',
      { by: { as: 'amount', amount: '25.00', each: 'week' } },
      '-50.00',
    ],
    ['the time missed, four hours at 12.50', { by: { as: 'time', price: '12.50' } }, '-50.00'],
    [
      'its part of the salary of its term: 900/3 + 900/2',
      { by: { as: 'part missed', each: 'term' }, on: ['salary'] },
      '-750.00',
    ],
    [
      'its part by the time: 900 × 60/180 + 900 × 180/240',
      { by: { as: 'part missed', of: 'time', each: 'term' }, on: ['salary'] },
      '-975.00',
    ],
    ['its part of the year: 1800 × 2/5', { by: { as: 'part missed' } }, '-720.00'],
    [
      'a tenth of the term’s salary each: 2 × 90',
      { by: { as: 'share', share: 1000, each: 'term' }, on: ['salary'] },
      '-180.00',
    ],
    [
      'nothing where one is forgiven each term',
      {
        by: { as: 'amount', amount: '25.00' },
        excused: { reasons: ['illness', 'other'], atMost: 1, each: 'term' },
      },
      '0.00',
    ],
    [
      'nothing for illness, which is always forgiven: 25 once',
      { by: { as: 'amount', amount: '25.00' }, excused: { reasons: ['illness'] } },
      '-25.00',
    ],
  ])('%s', (_, terms, amount) => {
    expect(taken([salary, docking(terms)], year)).toBe(amount);
  });

  it('30.00 with a day’s notice and 80.00 with less or none: the closer clause for each', () => {
    const early = docking({ by: { as: 'amount', amount: '30.00' } });
    const late: WrittenClause = {
      ...docking({ by: { as: 'amount', amount: '80.00' } }, { for: { noticeHours: { to: 23 } } }),
      id: 'docking-late',
    };
    expect(taken([salary, early, late], year)).toBe('-110.00');
  });

  it('what whoever pays the salary pays, though the clause names nobody', () => {
    const paid = { ...salary, payer: 'department' };
    const bill = priced([paid, docking({ by: { as: 'amount', amount: '25.00' } })], year);
    expect(bill.payers.map(({ payer, total }) => [payer, pounds(total)])).toEqual([
      ['department', '1750.00'],
    ]);
  });

  it('and says what was missed, why, and with what notice', () => {
    const [first, second] = priced(
      [salary, docking({ by: { as: 'amount', amount: '25.00' } })],
      year,
    ).lines.filter(({ clause }) => clause === 'docking');
    expect(first?.facts).toEqual([{ name: 'missed', value: 'class, illness, 4 days before the class' }]);
    expect(second?.facts).toEqual([{ name: 'missed', value: 'class, no word came' }]);
  });

  it('never more than the pay, whatever is missed', () => {
    const harsh = docking({ by: { as: 'amount', amount: '500.00' } });
    const hours: WrittenClause = { id: 'hours', kind: 'hourly', terms: { price: '20.00' } };
    fc.assert(
      fc.property(facts, (facts) => {
        const pay = priced([hours], facts).total;
        const docked = priced([hours, harsh], facts).total;
        expect(docked).toBeGreaterThanOrEqual(0n);
        expect(docked).toBeLessThanOrEqual(pay);
      }),
      { numRuns: 100 },
    );
  });
});

describe('docking says itself', () => {
  it.each<[string, object]>([
    [
      'Absence: 45.00 less for each class that the pianist misses. Any reason is forgiven 2 times a term. It never takes more than the pay.',
      {
        by: { as: 'amount', amount: '45.00' },
        excused: {
          reasons: ['illness', 'emergency', 'force majeure', 'forgotten', 'other'],
          atMost: 2,
          each: 'term',
        },
      },
    ],
    [
      'Absence: 45.00 less a day with classes that the pianist misses. It never takes more than the pay.',
      { by: { as: 'amount', amount: '45.00', each: 'day' } },
    ],
    [
      'Absence: 30.00 an hour less for the planned time of classes that the pianist misses, charged to the minute. It never takes more than the pay.',
      { by: { as: 'time', price: '30.00' } },
    ],
    [
      'Absence: 5\u00a0% of what “salary” charges for each term less for each class that the pianist misses. It never takes more than the pay.',
      { by: { as: 'share', share: 500, each: 'term' }, on: ['salary'] },
    ],
    [
      'Absence: the pay for each term is less by the part of its classes that the pianist misses. It never takes more than the pay.',
      { by: { as: 'part missed', each: 'term' } },
    ],
  ])('%s', (said, terms) => {
    const tariff = tariffOf([salary, docking(terms, { for: { calls: ['class'] } })]);
    expect(sentencesOf(tariff, 'en-GB').at(-1)?.sentence).toBe(said);
  });
});

it('two clauses that dock the same absences contradict', () => {
  const clauses = [
    docking({ by: { as: 'amount', amount: '1.00' } }),
    { ...docking({ by: { as: 'amount', amount: '2.00' } }), id: 'other' },
  ];
  const read = readTariff({ name: 'A', currency: 'GBP', version: 1, from: '2026-01-01', clauses });
  expect(refused(read) && read.sentence).toBe(
    'Clauses “docking” and “other” contradict: both dock the same absences of the pianist. Let one of them ask for something more (a kind of call, a day, a level), or remove it.',
  );
});

describe('a share or a part of pay for each term', () => {
  const stipend: WrittenClause = {
    id: 'stipend',
    kind: 'fixed',
    terms: { price: '1000.00', each: 'engagement', what: 'Stipend' },
  };
  const whyNot = (clauses: WrittenClause[]) => {
    const read = readTariff({ name: 'A', currency: 'GBP', version: 1, from: '2026-01-01', clauses });
    return refused(read) ? read.sentence : undefined;
  };
  const said =
    'Clause “docking” is reckoned for each term, and “stipend” charges for the engagement: that is no part of one term. Let “docking” be for as long, or name other clauses in it.';

  it.each<[string, object]>([
    ['a share', { by: { as: 'share', share: 2000, each: 'term' }, on: ['stipend'] }],
    ['a part', { by: { as: 'part missed', each: 'term' }, on: ['stipend'] }],
    ['a share of all pay', { by: { as: 'share', share: 2000, each: 'term' } }],
  ])('is refused of a stipend for the engagement: %s', (_, terms) => {
    expect(whyNot([stipend, docking(terms)])).toBe(said);
  });

  it('is taken of a salary for each term, and a sum for each term whatever the pay is for', () => {
    const share = docking({ by: { as: 'share', share: 2000, each: 'term' }, on: ['salary'] });
    expect(whyNot([salary, share])).toBeUndefined();
    expect(
      whyNot([stipend, docking({ by: { as: 'amount', amount: '45.00', each: 'term' } })]),
    ).toBeUndefined();
  });
});
