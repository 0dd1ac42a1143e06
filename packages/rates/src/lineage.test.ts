// A line that stands for what several clauses charged belongs to each of them in part: one that names a clause reaches
// its part and no more.

import { describe, expect, it } from 'vitest';
import type { Given } from './given.ts';
import { pounds, priced } from './priced.ts';
import type { WrittenClause } from './tariff.ts';

/** A rehearsal of 40.00 with a premium of 10.00, cancelled late for half: 25.00, of which 20.00 are for the hours. */
const hours: WrittenClause = { id: 'hours', kind: 'hourly', terms: { price: '40.00' } };
const premium: WrittenClause = {
  id: 'premium',
  kind: 'supplement',
  terms: { what: 'Sight-reading', by: { as: 'amount', amount: '10.00' } },
};
const half: WrittenClause = {
  id: 'notice',
  kind: 'cancellation',
  terms: { scale: [], otherwise: { owes: 'share', share: 5000 } },
};
const fallen: Given = {
  calls: ['rehearsal 60 on 2026-03-04'],
  fallen: [{ call: 0, at: '2026-03-04T08:00' }],
};
const schoolPays = (of: string[]): WrittenClause => ({
  id: 'school',
  kind: 'split',
  terms: { of, among: [{ payer: 'school', parts: 1 }] },
});

const lines = (clauses: WrittenClause[], facts: Given = fallen) =>
  priced(clauses, facts).lines.map(({ key, payer, amount }) => [key, payer, pounds(amount)]);
const owed = (clauses: WrittenClause[], facts: Given = fallen) =>
  Object.fromEntries(priced(clauses, facts).payers.map(({ payer, total }) => [payer, pounds(total)]));

describe('what a late cancellation leaves of hours and a premium', () => {
  it('is paid by the school as far as it is for the hours', () => {
    expect(lines([hours, premium, half, schoolPays(['hours'])])).toEqual([
      ['notice:c000/school', 'school', '20.00'],
      ['notice:c000', 'payer', '5.00'],
    ]);
  });

  it('says how much of it is for what', () => {
    const [theirs, rest] = priced([hours, premium, half, schoolPays(['hours'])], fallen).lines;
    expect(theirs?.arithmetic).toBe('50\u00a0% × 50.00 = 25.00; of it for “hours” 20.00; 1/1 of it = 20.00');
    expect(rest?.arithmetic).toBe('50\u00a0% × 50.00 = 25.00; of it for “premium” 5.00');
  });

  it('is not parted where all of it is meant', () => {
    expect(lines([hours, premium, half, schoolPays(['hours', 'premium'])])).toEqual([
      ['notice:c000/school', 'school', '25.00'],
    ]);
    expect(lines([hours, premium, half, schoolPays(['notice'])])).toEqual([
      ['notice:c000/school', 'school', '25.00'],
    ]);
  });

  it('counts towards a most for the hours with 20.00: of 60.00 where 50.00 is the most', () => {
    const most: WrittenClause = {
      id: 'week',
      kind: 'limit',
      terms: { what: 'Week', on: ['hours'], each: 'week', most: '50.00' },
    };
    const week = { ...fallen, calls: ['rehearsal 60 on 2026-03-04', 'rehearsal 60 on 2026-03-05'] };
    // 40.00 and 10.00 played, 25.00 left of the cancelled one, and 10.00 over the most of the hours
    expect(lines([hours, premium, half, most], week).at(-1)).toEqual([
      'week:payer:2026-03-02',
      'payer',
      '-10.00',
    ]);
    expect(owed([hours, premium, half, most], week)).toEqual({ payer: '65.00' });
  });

  it('is taken along by a limit: what the most takes off the hours is the school’s, cancelled or not', () => {
    const most: WrittenClause = { id: 'most', kind: 'limit', terms: { on: ['hours'], most: '50.00' } };
    const week = { ...fallen, calls: ['rehearsal 60 on 2026-03-04', 'rehearsal 60 on 2026-03-05'] };
    expect(owed([hours, premium, half, most, schoolPays(['hours'])], week)).toEqual({
      school: '50.00',
      payer: '15.00',
    });
  });

  it('goes to a third party as far as it is for what is theirs', () => {
    const theirs: WrittenClause = {
      id: 'theirs',
      kind: 'payee',
      terms: { payee: 'the festival', of: ['premium'] },
    };
    const { toOthers, total } = priced([hours, premium, half, theirs], fallen);
    expect(toOthers.map(({ amount }) => pounds(amount))).toEqual(['5.00']);
    expect(pounds(total)).toBe('20.00');
  });

  it('goes there also once it is shared out: half of 5.00 from each', () => {
    const theirs: WrittenClause = {
      id: 'theirs',
      kind: 'payee',
      terms: { payee: 'the festival', of: ['premium'] },
    };
    const halves: WrittenClause = {
      id: 'halves',
      kind: 'split',
      terms: {
        among: [
          { payer: 'school', parts: 1 },
          { payer: 'family', parts: 1 },
        ],
      },
    };
    const { toOthers, payers } = priced([hours, premium, half, halves, theirs], fallen);
    expect(toOthers.map(({ payer, amount }) => [payer, pounds(amount)])).toEqual([
      ['school', '2.50'],
      ['family', '2.50'],
    ]);
    expect(payers.map(({ total }) => pounds(total))).toEqual(['10.00', '10.00']);
  });
});

describe('a discount on hours and a premium together', () => {
  const tenth: WrittenClause = {
    id: 'tenth',
    kind: 'discount',
    terms: { what: 'Returning', by: { as: 'share', share: 1000, together: true } },
  };

  it('lessens the part of each: of 5.00 off 50.00 the hours have 4.00', () => {
    expect(owed([hours, premium, tenth, schoolPays(['hours'])], { calls: ['rehearsal 60'] })).toEqual({
      school: '36.00',
      payer: '9.00',
    });
  });

  it('also where the call then falls: half of 36.00 and of 9.00', () => {
    expect(owed([hours, premium, tenth, half, schoolPays(['hours'])])).toEqual({
      school: '18.00',
      payer: '4.50',
    });
  });
});
