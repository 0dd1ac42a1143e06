// A fixed fee for each term: what is played outside every term is none of it.

import { describe, expect, it } from 'vitest';
import { pounds, priced } from '../priced.ts';
import type { WrittenClause } from '../tariff.ts';

const stipend: WrittenClause = { id: 'stipend', kind: 'fixed', terms: { price: '1000.00', each: 'term' } };
const terms = ['fall 2026-08-24 to 2026-12-11', 'spring 2027-01-11 to 2027-05-07'];
const calls = ['lesson 60 on 2026-09-02', 'lesson 120 on 2026-12-20'];

describe('a fee of 1000.00 a term', () => {
  it('is owed once for the fall, and a lesson in the holidays has no price', () => {
    const bill = priced([stipend], { terms, calls });
    expect([pounds(bill.total), bill.unpriced]).toEqual(['1000.00', ['c001']]);
  });

  it('is owed once for all where the place has told no terms', () => {
    const bill = priced([stipend], { calls });
    expect([pounds(bill.total), bill.unpriced]).toEqual(['1000.00', []]);
  });
});
