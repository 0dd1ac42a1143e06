import type { ExchangeRate } from '@colla/ledger';
import { trialBalance } from '@colla/ledger';
import { currency } from '@colla/money';
import { granted, refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { invoiced, twoHours } from './billed.fixture.ts';
import { emptyBooks, figures } from './books.fixture.ts';
import { day, POUND } from './engaged.fixture.ts';
import type { MoneyEvent } from './event.ts';
import type { Payment } from './payment.ts';
import type { WriteOff } from './write-off.ts';

const EURO = granted(currency('EUR'));
const invoice = invoiced(twoHours(), '02-10');

function payment(amount: bigint, but: Partial<Payment> = {}): MoneyEvent {
  const allocations = [{ invoice: 'i1', amount }];
  return {
    kind: 'payment',
    record: {
      ...{
        id: 'y1',
        party: 'p1',
        receivedOn: day('02-20'),
        amount,
        currency: POUND,
        method: 'bank transfer',
      },
      ...{ allocations, credit: 0n },
      ...but,
    },
  };
}

/** Books in which the invoice of 120.00 was issued. */
function withInvoice() {
  const books = emptyBooks();
  books.enter({ kind: 'invoice', record: invoice });
  return books;
}

describe('an invoice', () => {
  it('makes its payer owe what was earned, by kind', () => {
    const journal = emptyBooks().enter({ kind: 'invoice', record: invoice });
    expect(journal).toMatchObject({
      id: 'j1',
      on: day('02-10'),
      event: 'invoice issued',
      source: { kind: 'invoice', id: 'i1' },
      currency: 'GBP',
      book: 'GBP',
    });
    expect(figures(journal)).toEqual([
      ['income rehearsal', 'receivable p1 i1', 6000n],
      ['income performance', 'receivable p1 i1', 6000n],
    ]);
    expect(journal.transfers[0]).toMatchObject({ party: 'p1', engagement: 'e1' });
  });

  it('owes the tax it adds to the authority', () => {
    const taxed = invoiced(
      twoHours([{ id: 'tax', kind: 'tax', terms: { name: 'VAT', rate: 2000 } }]),
      '02-10',
    );
    expect(figures(emptyBooks().enter({ kind: 'invoice', record: taxed }))).toEqual([
      ['income rehearsal', 'receivable p1 i1', 6000n],
      ['income performance', 'receivable p1 i1', 6000n],
      ['tax collected VAT', 'receivable p1 i1', 2400n],
    ]);
  });

  it('has the tax inside its prices taken out of what was earned: 20.00 of 120.00', () => {
    const inside = { name: 'VAT', rate: 2000, inside: true };
    const taxed = invoiced(twoHours([{ id: 'tax', kind: 'tax', terms: inside }]), '02-10');
    expect(figures(emptyBooks().enter({ kind: 'invoice', record: taxed }))).toEqual([
      ['income rehearsal', 'receivable p1 i1', 5000n],
      ['income performance', 'receivable p1 i1', 5000n],
      ['tax collected VAT', 'receivable p1 i1', 2000n],
    ]);
  });

  it('with a discount moves that the other way', () => {
    const tenth = { what: 'Student', by: { as: 'share', share: 1000 } };
    const cheaper = invoiced(twoHours([{ id: 'student', kind: 'discount', terms: tenth }]), '02-10');
    const moved = figures(emptyBooks().enter({ kind: 'invoice', record: cheaper }));
    expect(moved).toContainEqual(['receivable p1 i1', 'income discount', 1200n]);
  });
});

describe('a payment', () => {
  it('settles its invoice from the bank, or from the cash box', () => {
    expect(figures(withInvoice().enter(payment(5000n)))).toEqual([['receivable p1 i1', 'bank', 5000n]]);
    expect(figures(withInvoice().enter(payment(5000n, { method: 'cash' })))).toEqual([
      ['receivable p1 i1', 'cash', 5000n],
    ]);
  });

  it('keeps what is beyond as credit', () => {
    const books = withInvoice();
    const over = payment(12500n, { allocations: [{ invoice: 'i1', amount: 12000n }], credit: 500n });
    expect(figures(books.enter(over))).toEqual([
      ['receivable p1 i1', 'bank', 12000n],
      ['credit held p1', 'bank', 500n],
    ]);
    expect([books.open(invoice).owed, books.credit('p1')]).toEqual([0n, 500n]);
  });

  it('beyond what is owed is a broken invariant, since it was refused before', () => {
    const books = withInvoice();
    expect(() => books.enter(payment(12001n))).toThrow('more than there is was to be taken');
  });
});

describe('what is held', () => {
  const deposit: MoneyEvent = {
    kind: 'deposit',
    record: {
      ...{
        id: 'd1',
        engagement: 'e1',
        party: 'p1',
        receivedOn: day('01-10'),
        amount: 5000n,
        currency: POUND,
      },
      ...{ method: 'card', credit: 1000n },
    },
  };
  const head = { party: 'p1', on: day('02-11'), currency: POUND };

  it('as a deposit is a debt until it is applied to an invoice', () => {
    const books = withInvoice();
    expect(figures(books.enter(deposit))).toEqual([
      ['deposits held p1 e1', 'bank', 4000n],
      ['credit held p1', 'bank', 1000n],
    ]);
    const allocations = [{ invoice: 'i1', amount: 4000n }];
    const applied = books.enter({
      kind: 'deposit applied',
      record: { id: 'a1', engagement: 'e1', ...head, allocations },
    });
    expect(figures(applied)).toEqual([['receivable p1 i1', 'deposits held p1 e1', 4000n]]);
    expect([books.open(invoice).owed, books.deposit('e1')]).toEqual([8000n, 0n]);
  });

  it('as a deposit is paid back', () => {
    const books = withInvoice();
    books.enter(deposit);
    const record = { id: 'r1', engagement: 'e1', ...head, amount: 4000n, method: 'cash' } as const;
    expect(figures(books.enter({ kind: 'deposit returned', record }))).toEqual([
      ['cash', 'deposits held p1 e1', 4000n],
    ]);
    expect(() => books.enter({ kind: 'deposit returned', record })).toThrow('more than there is');
  });

  it('as credit settles an invoice, or is refunded', () => {
    const books = withInvoice();
    books.enter(deposit);
    const allocations = [{ invoice: 'i1', amount: 600n }];
    expect(
      figures(books.enter({ kind: 'credit applied', record: { id: 'a2', ...head, allocations } })),
    ).toEqual([['receivable p1 i1', 'credit held p1', 600n]]);
    const record = { id: 'r2', ...head, amount: 400n, method: 'bank transfer' } as const;
    expect(figures(books.enter({ kind: 'refund', record }))).toEqual([['bank', 'credit held p1', 400n]]);
    expect(books.credit('p1')).toBe(0n);
    expect(() => books.enter({ kind: 'refund', record })).toThrow('more than there is');
  });
});

describe('what will not come', () => {
  const record: WriteOff = {
    ...{ id: 'w1', invoice: 'i1', engagement: 'e1', party: 'p1', on: day('03-01'), amount: 30n },
    ...{ currency: POUND, reason: 'bank charges' },
  };

  it('is written off, pennies of rounding by themselves', () => {
    expect(figures(withInvoice().enter({ kind: 'write-off', record }))).toEqual([
      ['receivable p1 i1', 'write-offs', 30n],
    ]);
    expect(
      figures(withInvoice().enter({ kind: 'write-off', record: { ...record, reason: 'rounding' } })),
    ).toEqual([['receivable p1 i1', 'rounding', 30n]]);
  });
});

it('late interest that is charged is owed on its invoice', () => {
  const record = {
    ...{ id: 'l1', invoice: 'i1', engagement: 'e1', party: 'p1', on: day('05-01'), amount: 4020n },
    ...{ currency: POUND, arithmetic: '0.20 + 40.00' },
  };
  const books = withInvoice();
  expect(figures(books.enter({ kind: 'late interest', record }))).toEqual([
    ['income other', 'receivable p1 i1', 4020n],
  ]);
  expect(books.open(invoice).owed).toBe(16020n);
});

describe('in another currency than the book’s', () => {
  const euros = invoiced(twoHours([], { currency: EURO }), '02-10');
  const at = (rate: string): ExchangeRate => ({
    ...{ from: EURO, to: POUND, rate, on: day('02-10'), source: 'the bank' },
  });
  const paid = (amount: bigint, but: Partial<Payment> = {}) => payment(amount, { currency: EURO, ...but });

  function billed() {
    const books = emptyBooks();
    books.enter({ kind: 'invoice', record: euros }, at('0.85'));
    return books;
  }

  it('an invoice of 120.00 euro at 0.85 is owed as 102.00 pounds', () => {
    const [journal] = billed().journals;
    expect(journal && figures(journal)).toEqual([
      ['income rehearsal', 'receivable p1 i1', 6000n, 5100n],
      ['income performance', 'receivable p1 i1', 6000n, 5100n],
    ]);
    expect(journal?.rate).toMatchObject({ rate: '0.85', source: 'the bank' });
  });

  it('and paid at 0.80 it loses 6.00', () => {
    expect(figures(billed().enter(paid(12000n), at('0.80')))).toEqual([
      ['receivable p1 i1', 'bank', 12000n, 9600n],
      ['receivable p1 i1', 'exchange difference', 0n, 600n],
    ]);
  });

  it('and paid in two parts, at 0.80 and at 0.90, each by itself', () => {
    const books = billed();
    // 50.00 stood at 42.50 and came in as 40.00; 70.00 stood at 59.50 and came in as 63.00
    expect(figures(books.enter(paid(5000n), at('0.80')))[1]).toEqual([
      'receivable p1 i1',
      'exchange difference',
      0n,
      250n,
    ]);
    expect(figures(books.enter(paid(7000n, { id: 'y2' }), at('0.90')))[1]).toEqual([
      'exchange difference',
      'receivable p1 i1',
      0n,
      350n,
    ]);
    expect(trialBalance(books.posted).rows).toContainEqual({
      purpose: 'exchange difference',
      debit: 0n,
      credit: 100n,
    });
  });

  it('and a credit kept at 0.90 that settles it needs no rate of the day', () => {
    const books = billed();
    const record = { ...{ id: 'y3', party: 'p1', receivedOn: day('02-12'), amount: 12000n, currency: EURO } };
    books.enter(
      { kind: 'payment', record: { ...record, method: 'card', allocations: [], credit: 12000n } },
      at('0.90'),
    );
    const allocations = [{ invoice: 'i1', amount: 12000n }];
    const applied = { id: 'a1', party: 'p1', on: day('02-13'), currency: EURO, allocations };
    // 120.00 kept at 108.00 settles 120.00 that stand at 102.00
    expect(figures(books.enter({ kind: 'credit applied', record: applied }))).toEqual([
      ['receivable p1 i1', 'credit held p1', 12000n, 10800n],
      ['exchange difference', 'receivable p1 i1', 0n, 600n],
    ]);
  });

  it('nothing is posted without its exchange rate', () => {
    const answer = billed().attempt(paid(12000n));
    expect(answer).toMatchObject({ code: 'invoicing/no-rate', field: '/rate' });
    expect(refused(answer) && answer.sentence).toBe(
      'The books are kept in GBP, and this is in EUR. Enter the exchange rate of the day and where it is from.',
    );
  });
});

describe('nothing is posted', () => {
  const issuing = (on: string): MoneyEvent => ({
    kind: 'invoice',
    record: { ...invoice, issuedOn: day(on) },
  });

  it('in a closed year', () => {
    const books = emptyBooks({ closedThrough: day('02-10') });
    expect(books.attempt(issuing('02-10'))).toMatchObject({ code: 'ledger/closed-year' });
    expect(refused(books.attempt(issuing('02-11')))).toBe(false);
  });

  it('for a day that has not come', () => {
    const books = emptyBooks({ today: day('02-10') });
    expect(books.attempt(issuing('02-11'))).toMatchObject({ code: 'ledger/ahead' });
    expect(refused(books.attempt(issuing('02-10')))).toBe(false);
  });
});
