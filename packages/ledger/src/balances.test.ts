import { describe, expect, it } from 'vitest';
import { balance, balances, heldIn } from './balances.ts';
import {
  BANK,
  creditOf,
  day,
  depositFor,
  EURO,
  income,
  owedBy,
  POUND,
  pence,
  posted,
  VAT,
} from './told.fixture.ts';
import { trialBalance } from './trial-balance.ts';

const about = { party: 'p1', engagement: 'e1' };

/**
 * 1 February: 100.00 as a deposit. 10 February: an invoice of 240.00, 40.00 of it tax. 11 February: the deposit goes
 * towards it. 20 February: 150.00 comes in, ten more than is owed. 1 March: 12.00 euro, worth 10.00, as a credit.
 */
const book = [
  ...posted({ id: 'j1', on: day('02-01'), transfers: [pence(depositFor('e1', 'p1'), BANK, 10000n)] }),
  ...posted({
    id: 'j2',
    on: day('02-10'),
    transfers: [
      { ...pence(income('rehearsal'), owedBy('p1', 'i1'), 20000n), ...about },
      { ...pence(VAT, owedBy('p1', 'i1'), 4000n), ...about },
    ],
  }),
  ...posted({
    id: 'j3',
    on: day('02-11'),
    transfers: [pence(owedBy('p1', 'i1'), depositFor('e1', 'p1'), 10000n)],
  }),
  ...posted({
    id: 'j4',
    on: day('02-20'),
    transfers: [pence(owedBy('p1', 'i1'), BANK, 14000n), pence(creditOf('p1'), BANK, 1000n)],
  }),
  ...posted({
    id: 'j5',
    on: day('03-01'),
    currency: EURO,
    transfers: [{ from: creditOf('p2'), to: BANK, amount: 1200n, book: 1000n }],
  }),
];

describe('what an account holds is said as people say it', () => {
  it.each([
    ['owed on the invoice before the deposit counts', { purpose: 'receivable', asAt: day('02-10') }, 24000n],
    ['owed once it does', { purpose: 'receivable', asAt: day('02-11') }, 14000n],
    ['owed in the end', { purpose: 'receivable' }, 0n],
    ['held as a deposit', { purpose: 'deposits held', asAt: day('02-10') }, 10000n],
    ['held for another engagement', { purpose: 'deposits held', engagement: 'e2' }, 0n],
    ['held as the credit of one payer', { purpose: 'credit held', party: 'p1' }, 1000n],
    ['earned of one engagement', { purpose: 'income', engagement: 'e1' }, 20000n],
    ['earned for performances', { purpose: 'income', kind: 'performance' }, 0n],
    ['owed as tax', { purpose: 'tax collected' }, 4000n],
    ['at the bank through one record', { purpose: 'bank', source: 'j4' }, 15000n],
  ] as const)('%s', (_, which, amount) => {
    expect(balance(book, { currency: POUND, ...which })).toEqual({ amount, book: amount });
  });

  it('each currency by itself, and what it is in the book beside it', () => {
    expect(balances(book, { party: 'p2' })).toEqual([
      { account: creditOf('p2'), currency: EURO, amount: 1200n, book: 1000n },
    ]);
    expect(balance(book, { purpose: 'bank', currency: EURO })).toEqual({ amount: 1200n, book: 1000n });
  });

  it('and accounts that hold nothing are left out', () => {
    expect(balances(book, { purpose: 'receivable' })).toEqual([]);
  });

  it('and as debits where sums are set against one another', () => {
    expect(heldIn(book, creditOf('p1'), POUND)).toEqual({ amount: -1000n, book: -1000n });
    expect(heldIn(book, creditOf('p1'), EURO)).toEqual({ amount: 0n, book: 0n });
  });
});

describe('the trial balance', () => {
  it('has each account on its own side, and one sum on both', () => {
    // at the bank 100.00 + 150.00 + 10.00; credits 10.00 and 10.00; earned 200.00; tax 40.00
    expect(trialBalance(book)).toEqual({
      rows: [
        { purpose: 'bank', debit: 26000n, credit: 0n },
        { purpose: 'credit held', debit: 0n, credit: 2000n },
        { purpose: 'income', of: 'rehearsal', debit: 0n, credit: 20000n },
        { purpose: 'tax collected', of: 'VAT', debit: 0n, credit: 4000n },
      ],
      total: 26000n,
    });
  });

  it('can be asked for as it was at the end of any day', () => {
    expect(trialBalance(book, day('02-10'))).toEqual({
      rows: [
        { purpose: 'receivable', debit: 24000n, credit: 0n },
        { purpose: 'bank', debit: 10000n, credit: 0n },
        { purpose: 'deposits held', debit: 0n, credit: 10000n },
        { purpose: 'income', of: 'rehearsal', debit: 0n, credit: 20000n },
        { purpose: 'tax collected', of: 'VAT', debit: 0n, credit: 4000n },
      ],
      total: 34000n,
    });
    expect(trialBalance(book, day('01-31'))).toEqual({ rows: [], total: 0n });
  });

  it('of books that were damaged is loud', () => {
    expect(() => trialBalance(book.slice(1))).toThrow('the books do not balance');
  });
});
