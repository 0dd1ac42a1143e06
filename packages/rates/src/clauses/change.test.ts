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
