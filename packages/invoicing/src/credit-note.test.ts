import { cancelCall, type Engagement, playCall } from '@colla/engagements';
import { granted, refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import type { OpenInvoice } from './allocation.ts';
import { billable } from './billable.ts';
import { creditDraft, invoiced, numbered, twoHours } from './billed.fixture.ts';
import { emptyBooks, figures } from './books.fixture.ts';
import { takeBackInvoice } from './credit-note.ts';
import { AFTERWARDS, at, day, lasting, school, statementOfAll } from './engaged.fixture.ts';
import type { Invoice } from './invoice.ts';

const agreed = twoHours();
const first = invoiced(agreed, '02-10');
/** The rehearsal took half an hour: 30.00 less than was invoiced. */
const shorter = granted(playCall(agreed, 'c1', lasting(agreed, 'c1', 30), AFTERWARDS));

function openOn(invoice: Invoice, owed: bigint): OpenInvoice {
  const { id, number, currency, to, engagement, issuedOn, dueOn } = invoice;
  return { invoice: id, number, owed, currency, party: to.party, engagement, issuedOn, dueOn };
}

function credit(engagement: Engagement, owed: bigint, on = '02-12') {
  return creditDraft(engagement, on, { earlier: [first], invoices: [openOn(first, owed)] });
}

describe('where the statement says less than was invoiced', () => {
  it('a credit note gives back the difference, line by line', () => {
    const note = numbered(granted(credit(shorter, 12000n)));
    expect(note).toMatchObject({ number: 'C2026-0001', net: -3000n, tax: 0n, total: -3000n });
    expect(note.lines.map(({ what, amount, on }) => [what, amount, on?.toString()])).toEqual([
      ['Rehearsal, changed', -3000n, '2026-02-02'],
    ]);
  });

  it('and then invoices and credit note together are the statement', () => {
    const note = numbered(granted(credit(shorter, 12000n)));
    const left = billable(statementOfAll(shorter), 'payer', [first, note]);
    expect(left).toMatchObject({ lines: [], taxes: [], total: 0n });
  });

  it.each([
    ['is owed in full, it settles a part', 12000n, 3000n, 0n],
    ['is paid but for 10.00, it settles that and keeps 20.00 as credit', 1000n, 1000n, 2000n],
    ['is paid, all of it is kept as credit', 0n, 0n, 3000n],
  ])('and the invoice %s', (_, owed, settles, kept) => {
    expect(granted(credit(shorter, owed))).toMatchObject({
      against: settles > 0n ? [{ invoice: 'i1', amount: settles }] : [],
      credit: kept,
    });
  });

  it('it settles the latest invoice first: what changed was billed last', () => {
    const invoices = [
      openOn(first, 12000n),
      { ...openOn(first, 2000n), invoice: 'i2', issuedOn: day('02-11') },
    ];
    const draft = granted(creditDraft(shorter, '02-12', { earlier: [first], invoices }));
    expect(draft.against).toEqual([
      { invoice: 'i2', amount: 2000n },
      { invoice: 'i1', amount: 1000n },
    ]);
  });

  it('takes a fallen call’s fee back and asks for its cancellation on one document', () => {
    const word = { at: at('02-08T10:00'), by: 'payer', reason: 'other' } as const;
    const fallen = granted(cancelCall(agreed, 'c2', word));
    const { lines, total } = numbered(granted(credit(fallen, 12000n)));
    expect(lines.map(({ what, amount }) => [what, amount])).toEqual([
      ['Cancellation', 3000n],
      ['Audition, taken back', -6000n],
    ]);
    expect(total).toBe(-3000n);
  });

  it('posts what is taken back, and what it settles, through the payer’s credit', () => {
    const books = emptyBooks();
    books.enter({ kind: 'invoice', record: first });
    const paid = {
      id: 'y1',
      party: 'p1',
      receivedOn: day('02-11'),
      amount: 10000n,
      currency: first.currency,
    };
    books.enter({
      kind: 'payment',
      record: { ...paid, method: 'card', allocations: [{ invoice: 'i1', amount: 10000n }], credit: 0n },
    });
    const note = numbered(granted(credit(shorter, books.open(first).owed)));
    expect(figures(books.enter({ kind: 'credit note', record: note }))).toEqual([
      ['credit held p1', 'income rehearsal', 3000n],
      ['receivable p1 i1', 'credit held p1', 2000n],
    ]);
    expect([books.open(first).owed, books.credit('p1')]).toEqual([0n, 1000n]);
  });

  it('gives back the tax with it: 20 % of 30.00', () => {
    const taxed = twoHours([{ id: 'tax', kind: 'tax', terms: { name: 'VAT', rate: 2000 } }]);
    const invoice = invoiced(taxed, '02-10');
    const less = granted(playCall(taxed, 'c1', lasting(taxed, 'c1', 30), AFTERWARDS));
    const draft = creditDraft(less, '02-12', { earlier: [invoice], invoices: [openOn(invoice, 14400n)] });
    expect(granted(draft).billable).toMatchObject({ net: -3000n, tax: -600n, total: -3600n });
  });
});

describe('there is no credit note', () => {
  it('where the statement says as much as was invoiced', () => {
    expect(credit(agreed, 12000n)).toMatchObject({ code: 'invoicing/nothing-to-credit' });
  });

  it('before the invoice it answers, nor after the day of the statement', () => {
    const answer = credit(shorter, 12000n, '02-09');
    expect(answer).toMatchObject({ code: 'invoicing/credited-too-early', field: '/issuedOn' });
    expect(refused(answer) && answer.sentence).toBe(
      'Invoice 2026-0001 was issued on 2026-02-10, and no credit note comes before it. Correct the day of issue.',
    );
    const statement = { ...statementOfAll(shorter), asOf: at('02-11T12:00') };
    const ahead = creditDraft(shorter, '02-12', { statement, earlier: [first], invoices: [] });
    expect(ahead).toMatchObject({ code: 'invoicing/issued-ahead', field: '/issuedOn' });
  });

  it('to nobody', () => {
    const nobody = creditDraft(shorter, '02-12', { to: undefined, earlier: [first], invoices: [] });
    expect(nobody).toMatchObject({ code: 'invoicing/nobody-pays' });
  });

  it('to somebody else than the invoice went to', () => {
    const invoices = [openOn(first, 12000n)];
    const answer = creditDraft(shorter, '02-12', { to: school, earlier: [first], invoices });
    expect(answer).toMatchObject({ code: 'invoicing/other-payer', field: '/payer' });
    expect(refused(answer) && answer.sentence).toBe(
      'Invoice 2026-0001 was not addressed to Harbour Road School, who pays now. Take that invoice back, and invoice anew.',
    );
  });

  it('larger than what was invoiced', () => {
    const whole = statementOfAll(agreed);
    // 60.00 less 65.00 is 5.00 less than nothing: of 120.00 that was invoiced, 125.00 would be given back
    const lines = whole.lines.map((line, index) => (index === 0 ? line : { ...line, amount: -6500n }));
    const invoices = [openOn(first, 12000n)];
    const answer = creditDraft(agreed, '02-12', {
      statement: { ...whole, lines },
      earlier: [first],
      invoices,
    });
    expect(answer).toMatchObject({ code: 'invoicing/beyond-invoiced' });
    expect(refused(answer) && answer.sentence).toBe(
      'A credit note of 125.00 would give back more than the 120.00 that invoices still ask for. Credit at most 120.00.',
    );
  });
});

describe('an invoice that was wrong is taken back whole', () => {
  const taking = { open: openOn(first, 5000n), earlier: [first], taken: false, issuedOn: day('02-12') };
  const note = numbered(granted(takeBackInvoice(first, { ...taking, note: 'Wrong name' })));

  it('line for line, and what was paid on it becomes credit', () => {
    expect(note).toMatchObject({
      total: -12000n,
      note: 'Wrong name',
      against: [{ invoice: 'i1', amount: 5000n }],
      credit: 7000n,
      takesBack: 'i1',
    });
    expect(note.lines.map(({ what, amount, rate, quantity }) => [what, amount, rate, quantity])).toEqual([
      ['Rehearsal, taken back', -6000n, -6000n, { count: 60, of: 60 }],
      ['Audition, taken back', -6000n, -6000n, { count: 60, of: 60 }],
    ]);
  });

  it('so that everything can be asked for anew, as it was', () => {
    const again = invoiced(agreed, '02-12', { id: 'i2', ordinal: 2, earlier: [first, note] });
    expect(again.lines.map(({ what, amount }) => [what, amount])).toEqual([
      ['Rehearsal', 6000n],
      ['Audition', 6000n],
    ]);
    expect(again.total).toBe(12000n);
  });

  it('and not a second time, nor once less of it is left', () => {
    expect(takeBackInvoice(first, { ...taking, taken: true })).toMatchObject({
      code: 'invoicing/taken-back-already',
    });
    const difference = numbered(granted(credit(shorter, 12000n)));
    expect(takeBackInvoice(first, { ...taking, earlier: [first, difference] })).toMatchObject({
      code: 'invoicing/beyond-invoiced',
    });
  });
});
