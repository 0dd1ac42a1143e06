import { describe, expect, it } from 'vitest';
import { pounds, priced } from '../priced.ts';
import type { WrittenClause } from '../tariff.ts';

const clauses: WrittenClause[] = [
  { id: 'hours', kind: 'hourly', terms: { price: '60.00' } },
  { id: 'moving', kind: 'change', terms: { free: 1, noticeHours: 48, after: [5000] } },
];
const first = { call: 0, at: '2026-02-20T10:00', was: '2026-02-26T10:00' };
const second = { call: 1, at: '2026-02-21T10:00', was: '2026-02-27T10:00' };

describe('a call that the pianist puts at another time', () => {
  const total = (...moves: (typeof first & { by?: 'payer' | 'pianist' })[]) =>
    pounds(priced(clauses, { calls: ['2 × rehearsal 60'], moves }).total);

  it('costs nothing', () => {
    expect(total({ ...first, by: 'pianist' }, { ...second, by: 'pianist' })).toBe('120.00');
  });

  it('leaves the payer the change that is free', () => {
    expect(total({ ...first, by: 'pianist' }, second)).toBe('120.00');
    // of two at the payer's wish the second costs half of 60.00
    expect(total(first, second)).toBe('150.00');
  });
});

describe('a call that is moved within a day', () => {
  const day: WrittenClause = { id: 'day', kind: 'fixed', terms: { price: '150.00', each: 'day' } };
  const half: WrittenClause = { id: 'moving', kind: 'change', terms: { after: [5000] } };
  const moves = [{ call: 0, at: '2026-02-20T10:00', was: '2026-02-26T10:00' }];

  it('costs half of its part of the fee of the day: of two calls at 150.00 half of 75.00', () => {
    const calls = ['rehearsal 60 on 2026-03-02 at 10:00', 'rehearsal 60 on 2026-03-02 at 14:00'];
    expect(pounds(priced([day, half], { calls, moves }).total)).toBe('187.50');
  });

  it('costs nothing where changes are charged with the hours only, and the day holds', () => {
    const either: WrittenClause = {
      id: 'either',
      kind: 'either',
      terms: { keep: 'lower', each: 'day', ways: [{ of: ['hours', 'moving'] }, { of: ['day'] }] },
    };
    const hourly: WrittenClause = { id: 'hours', kind: 'hourly', terms: { price: '40.00' } };
    const facts = { calls: ['rehearsal 300 on 2026-03-02'], moves };
    // Five hours are 200.00, and 100.00 for the change; the day is 150.00.
    expect(pounds(priced([hourly, day, half, either], facts).total)).toBe('150.00');
  });
});
