import { describe, expect, it } from 'vitest';
import { accountKey, NATURES, PURPOSES, spoken } from './account.ts';
import { BANK, creditOf, depositFor, income, owedBy, VAT } from './told.fixture.ts';

describe('two accounts are one', () => {
  it('only where they are for the same, of the same party and document', () => {
    const different = [
      owedBy('p1', 'i1'),
      owedBy('p1', 'i2'),
      owedBy('p2', 'i1'),
      creditOf('p1'),
      creditOf('p2'),
      depositFor('e1', 'p1'),
      depositFor('e1', 'p2'),
      depositFor('p1', 'e1'),
      income('rehearsal'),
      income('other'),
      VAT,
      BANK,
    ];
    expect(new Set(different.map(accountKey)).size).toBe(different.length);
    expect(accountKey({ invoice: 'i1', purpose: 'receivable', party: 'p1' })).toBe(
      accountKey(owedBy('p1', 'i1')),
    );
  });

  it('whatever is in their names', () => {
    expect(accountKey(owedBy('a","b', 'c'))).not.toBe(accountKey(owedBy('a', 'b","c')));
  });
});

it('what is owed, held, earned and spent are all above nothing when people speak of them', () => {
  const debits = PURPOSES.filter((purpose) => ['asset', 'expense'].includes(NATURES[purpose]));
  expect(debits).toEqual(['receivable', 'bank', 'cash', 'costs', 'write-offs', 'rounding']);
  expect(spoken(BANK, 500n)).toBe(500n);
  expect(spoken(creditOf('p1'), -500n)).toBe(500n);
});
