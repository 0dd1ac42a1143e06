import { heldIn, type Journal } from '@colla/ledger';
import { currency } from '@colla/money';
import { granted, refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { invoiced, twoHours } from './billed.fixture.ts';
import { emptyBooks, figures } from './books.fixture.ts';
import { day, POUND } from './engaged.fixture.ts';
import type { MoneyEvent } from './event.ts';
import type { Payment } from './payment.ts';
import { type Undo, type Undoable, undo } from './undo.ts';
import type { WriteOff } from './write-off.ts';

const invoice = invoiced(twoHours(), '02-10');
const EURO = granted(currency('EUR'));

const paid: Payment = {
  ...{ id: 'y1', party: 'p1', receivedOn: day('02-20'), amount: 12500n, currency: POUND, method: 'cheque' },
  ...{ allocations: [{ invoice: 'i1', amount: 12000n }], credit: 500n },
};
const payment = (but: Partial<Payment> = {}): MoneyEvent => ({
  kind: 'payment',
  record: { ...paid, ...but },
});
const toInvoice = (amount: bigint) => ({ amount, allocations: [{ invoice: 'i1', amount }], credit: 0n });
const deposit: MoneyEvent = {
  kind: 'deposit',
  record: {
    ...{ id: 'd1', engagement: 'e1', party: 'p1', receivedOn: day('01-10'), amount: 5000n, currency: POUND },
    ...{ method: 'cheque', credit: 0n },
  },
};

function undoing(
  kind: Undoable,
  journals: readonly [Journal, ...Journal[]],
  but: Partial<Undo> = {},
): MoneyEvent {
  const of = { kind, id: journals[0].source.id };
  return { kind: 'undo', record: { id: 'u1', of, on: day('03-01'), because: 'bounced', ...but }, journals };
}

describe('a payment that bounced', () => {
  it('leaves everything as it was before it came', () => {
    const books = emptyBooks();
    books.enter({ kind: 'invoice', record: invoice });
    const journal = books.enter(payment());
    const bounced = books.enter(undoing('payment', [journal]));
    expect(bounced).toMatchObject({
      event: 'bounced: payment received',
      source: { kind: 'undo', id: 'u1' },
      takesBack: { kind: 'payment', id: 'y1' },
    });
    expect(figures(bounced)).toEqual([
      ['bank', 'receivable p1 i1', 12000n],
      ['bank', 'credit held p1', 500n],
    ]);
    expect([books.open(invoice).owed, books.credit('p1')]).toEqual([12000n, 0n]);
  });

  it('whose rest was refunded leaves a payer who owes that too', () => {
    const books = emptyBooks();
    books.enter({ kind: 'invoice', record: invoice });
    const journal = books.enter(payment());
    const refund = {
      id: 'r1',
      party: 'p1',
      on: day('02-21'),
      amount: 500n,
      currency: POUND,
      method: 'cash',
    } as const;
    books.enter({ kind: 'refund', record: refund });
    books.enter(undoing('payment', [journal]));
    expect([books.open(invoice).owed, books.credit('p1')]).toEqual([12000n, -500n]);
  });

  it('takes back what was written off when it came', () => {
    const books = emptyBooks();
    books.enter({ kind: 'invoice', record: invoice });
    const journal = books.enter(payment(toInvoice(11970n)));
    const given: WriteOff = {
      ...{ id: 'w1', invoice: 'i1', engagement: 'e1', party: 'p1', on: day('02-20'), amount: 30n },
      ...{ currency: POUND, reason: 'bank charges', payment: 'y1' },
    };
    const writtenOff = books.enter({ kind: 'write-off', record: given });
    books.enter(undoing('payment', [journal, writtenOff]));
    expect(books.open(invoice).owed).toBe(12000n);
    expect(heldIn(books.posted, { purpose: 'write-offs' }, POUND).amount).toBe(0n);
  });

  it('in euro takes its exchange difference back as well', () => {
    const books = emptyBooks();
    const euros = invoiced(twoHours([], { currency: EURO }), '02-10');
    const at = (rate: string) => ({ from: EURO, to: POUND, rate, on: day('02-10'), source: 'the bank' });
    books.enter({ kind: 'invoice', record: euros }, at('0.85'));
    const journal = books.enter(payment({ ...toInvoice(12000n), currency: EURO }), at('0.80'));
    books.enter(undoing('payment', [journal]));
    const held = (purpose: 'bank' | 'exchange difference') => heldIn(books.posted, { purpose }, EURO);
    expect(books.open(euros).owed).toBe(12000n);
    expect([held('bank'), held('exchange difference')]).toEqual([
      { amount: 0n, book: 0n },
      { amount: 0n, book: 0n },
    ]);
  });
});

describe('a deposit that bounced', () => {
  it('is no longer held', () => {
    const books = emptyBooks();
    const journal = books.enter(deposit);
    expect(figures(books.enter(undoing('deposit', [journal])))).toEqual([
      ['bank', 'deposits held p1 e1', 5000n],
    ]);
    expect(books.deposit('e1')).toBe(0n);
  });

  it('after 20.00 of it settled an invoice is owed by its payer to that extent', () => {
    const books = emptyBooks();
    const journal = books.enter(deposit);
    books.enter({ kind: 'invoice', record: invoice });
    const applied = { id: 'a1', engagement: 'e1', party: 'p1', on: day('02-11'), currency: POUND };
    const allocations = [{ invoice: 'i1', amount: 2000n }];
    books.enter({ kind: 'deposit applied', record: { ...applied, allocations } });
    expect(figures(books.enter(undoing('deposit', [journal])))).toEqual([
      ['bank', 'deposits held p1 e1', 5000n],
      ['deposits held p1 e1', 'credit held p1', 2000n],
    ]);
    expect([books.open(invoice).owed, books.deposit('e1'), books.credit('p1')]).toEqual([10000n, 0n, -2000n]);
  });
});

describe('what was entered by mistake is taken back', () => {
  const because = 'entered by mistake';

  it('and said to be', () => {
    const books = emptyBooks();
    books.enter({ kind: 'invoice', record: invoice });
    const journal = books.enter(payment());
    expect(books.enter(undoing('payment', [journal], { because }))).toMatchObject({
      event: 'taken back: payment received',
    });
  });

  it('but not interest that has been paid since', () => {
    const books = emptyBooks();
    books.enter({ kind: 'invoice', record: invoice });
    const interest = {
      id: 'l1',
      invoice: 'i1',
      engagement: 'e1',
      party: 'p1',
      on: day('02-12'),
      amount: 500n,
    };
    const journal = books.enter({
      kind: 'late interest',
      record: { ...interest, currency: POUND, arithmetic: '' },
    });
    books.enter(payment(toInvoice(12500n)));
    expect(books.attempt(undoing('late interest', [journal], { because }))).toMatchObject({
      code: 'invoicing/paid-meanwhile',
    });
  });
});

describe('taking back', () => {
  const books = emptyBooks();
  books.enter({ kind: 'invoice', record: invoice });
  const journal = books.enter(payment());
  const word: Undo = { id: 'u1', of: { kind: 'payment', id: 'y1' }, on: day('02-20'), because: 'bounced' };

  it('is done once, on the day of the record or later', () => {
    expect(undo(word, { journal, undone: false })).toBe(word);
    expect(undo(word, { journal, undone: true })).toMatchObject({ code: 'invoicing/undone-already' });
    const early = undo({ ...word, on: day('02-19') }, { journal, undone: false });
    expect(early).toMatchObject({ code: 'invoicing/undone-too-early', field: '/on' });
    expect(refused(early) && early.sentence).toBe(
      'This was entered for 2026-02-20, and cannot be taken back before that. Correct the day.',
    );
  });

  it('says of a mere entry that it was a mistake, since no bank carried it', () => {
    const entry: Undo = { ...word, of: { kind: 'credit applied', id: 'a1' } };
    expect(undo(entry, { journal, undone: false })).toMatchObject({ code: 'invoicing/nothing-to-bounce' });
    expect(undo({ ...entry, because: 'entered by mistake' }, { journal, undone: false })).toMatchObject({
      id: 'u1',
    });
  });
});
