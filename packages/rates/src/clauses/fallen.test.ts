// What fallen calls leave on the statement: never more than they would have cost.

import { describe, expect, it } from 'vitest';
import type { Given } from '../given.ts';
import { pounds, priced } from '../priced.ts';
import type { WrittenClause } from '../tariff.ts';

const total = (clauses: WrittenClause[], facts: Given) => pounds(priced(clauses, facts).total);
const owes = (otherwise: object): WrittenClause => ({
  id: 'notice',
  kind: 'cancellation',
  terms: { scale: [], otherwise },
});
const twenty = owes({ owes: 'amount', amount: '20.00' });
const fallen = (...calls: number[]) => calls.map((call) => ({ call, at: '2026-03-01T09:00' }));

describe('a sum that is owed for a call that falls', () => {
  const pack: WrittenClause = {
    id: 'pack',
    kind: 'package',
    terms: { price: '150.00', what: 'Recital package', includes: [{ of: {} }] },
  };
  const hours: WrittenClause = { id: 'hours', kind: 'hourly', terms: { price: '15.00' } };

  it('is not owed beside a package that is charged whole', () => {
    expect(total([pack, twenty], { calls: ['rehearsal 60', 'recital 60'], fallen: fallen(0) })).toBe(
      '150.00',
    );
  });

  it('is owed for each call of a package that falls altogether', () => {
    const calls = ['2 × rehearsal 60', 'recital 60'];
    expect(total([pack, twenty], { calls, fallen: fallen(0, 1, 2) })).toBe('60.00');
  });

  it('and is no more than the package for all of them', () => {
    expect(
      total([pack, twenty], { calls: ['9 × rehearsal 60'], fallen: fallen(0, 1, 2, 3, 4, 5, 6, 7, 8) }),
    ).toBe('150.00');
  });

  it('is no more than the call would have cost', () => {
    expect(total([hours, twenty], { calls: ['rehearsal 60'], fallen: fallen(0) })).toBe('15.00');
  });

  it('leaves nothing of a call that would have cost nothing', () => {
    const free: WrittenClause = { id: 'free', kind: 'fixed', terms: { price: '0.00' } };
    expect(priced([free, twenty], { calls: ['rehearsal 60'], fallen: fallen(0) }).lines).toEqual([]);
  });
});

describe('a package of which one call falls for half and one for all', () => {
  it('is owed as the one that leaves the most', () => {
    const clauses: WrittenClause[] = [
      {
        id: 'pack',
        kind: 'package',
        terms: { price: '150.00', what: 'Recital package', includes: [{ of: {} }] },
      },
      {
        id: 'notice',
        kind: 'cancellation',
        terms: { scale: [{ before: 24, owes: { owes: 'share', share: 5000 } }], otherwise: { owes: 'all' } },
      },
    ];
    const falls = [
      { call: 0, at: '2026-02-20T09:00' },
      { call: 1, at: '2026-03-03T09:00' },
    ];
    const turned = [
      { call: 0, at: '2026-03-02T09:00' },
      { call: 1, at: '2026-02-20T09:00' },
    ];
    const calls = ['rehearsal 60', 'recital 60'];
    expect([falls, turned].map((fallen) => total(clauses, { calls, fallen }))).toEqual(['150.00', '150.00']);
  });
});

describe('a sum that is owed for a call of two payers', () => {
  const clauses: WrittenClause[] = [
    { id: 'hours', kind: 'hourly', payer: 'school', terms: { price: '15.00' } },
    {
      id: 'sunday',
      kind: 'supplement',
      payer: 'family',
      terms: { what: 'Sunday', by: { as: 'amount', amount: '10.00' } },
    },
    twenty,
  ];

  it('is owed by each up to what they would have paid: 15.00 and the other 5.00', () => {
    const { payers } = priced(clauses, { calls: ['rehearsal 60'], fallen: fallen(0) });
    expect(payers.map(({ payer, total }) => [payer, pounds(total)])).toEqual([
      ['school', '15.00'],
      ['family', '5.00'],
    ]);
  });
});

describe('a deposit that is owed', () => {
  const clauses: WrittenClause[] = [
    { id: 'hours', kind: 'hourly', for: { calls: ['rehearsal'] }, terms: { price: '20.00' } },
    { id: 'recital', kind: 'fixed', for: { calls: ['recital'] }, terms: { price: '400.00' } },
    {
      id: 'deposit',
      kind: 'deposit',
      terms: { of: { as: 'share', share: 5000 }, due: [{ event: 'agreement', days: 3 }] },
    },
    owes({ owes: 'deposit' }),
  ];
  const calls = ['rehearsal 60', 'recital 60'];

  it('stays held for the recital where only the rehearsal falls', () => {
    expect(total(clauses, { calls, fallen: fallen(0) })).toBe('400.00');
  });

  it('is kept where rehearsal and recital fall: half of 420.00', () => {
    expect(total(clauses, { calls, fallen: fallen(0, 1) })).toBe('210.00');
  });
});

describe('forty premiums of 100 %, each on the hour and on all before it', () => {
  it('double a penny forty times, and half of that is left of an hour cancelled late', () => {
    const ids = Array.from({ length: 40 }, (_, index) => `premium-${index}`);
    const premiums = ids.map(
      (id, index): WrittenClause => ({
        id,
        kind: 'supplement',
        terms: {
          what: id,
          by: { as: 'share', share: 10_000, together: true },
          on: ['hours', ...ids.slice(0, index)],
        },
      }),
    );
    const hours: WrittenClause = { id: 'hours', kind: 'hourly', terms: { price: '0.01' } };
    const half = owes({ owes: 'share', share: 5000 });
    // 0.01 × 2 to the power of 40 is 10 995 116 277.76.
    expect(total([hours, ...premiums, half], { calls: ['rehearsal 60'], fallen: fallen(0) })).toBe(
      '5497558138.88',
    );
  });
});
