import { cancel, cancelCall } from '@colla/engagements';
import { currency, fromDecimal } from '@colla/money';
import type { WrittenClause } from '@colla/rates';
import { granted, refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import type { OpenInvoice } from './allocation.ts';
import { billable } from './billable.ts';
import { invoiced, twoHours } from './billed.fixture.ts';
import { emptyBooks, figures } from './books.fixture.ts';
import { applyDeposit, depositNext, receiveDeposit, returnDeposit } from './deposit.ts';
import { draftDepositRequest, issueDepositRequest } from './deposit-request.ts';
import { at, day, engaged, mara, organisation, POUND, statementOfAll } from './engaged.fixture.ts';
import type { Invoice } from './invoice.ts';
import published from './published-values.json' with { type: 'json' };

const quarter: WrittenClause = {
  id: 'deposit',
  kind: 'deposit',
  terms: {
    of: { as: 'share', share: 2500 },
    due: [{ event: 'agreement', days: 3 }],
    refundable: [{ event: 'first call', days: -14 }],
  },
};
const agreed = twoHours([quarter]);
const today = day('12-31');

function ask(but: Partial<Parameters<typeof draftDepositRequest>[0]> = {}) {
  return draftDepositRequest({
    ...{ engagement: agreed, statement: statementOfAll(agreed), payer: 'payer', to: mara, asked: 0n },
    ...{ organisation, issuedOn: day('01-06') },
    ...but,
  });
}

describe('a deposit is asked for', () => {
  it('as it was agreed: a quarter of 120.00, due three days after the agreement', () => {
    const request = issueDepositRequest(granted(ask()), { id: 'd1', series: 'D2026', ordinal: 1 });
    expect(request).toMatchObject({
      number: 'D2026-0001',
      amount: 3000n,
      to: { party: 'p1' },
      currency: 'GBP',
    });
    expect(request.dueOn.toString()).toBe('2026-01-08');
    expect(request.refundableUntil?.toString()).toBe('2026-01-19');
    expect(request.terms).toContain('A deposit of 25');
  });

  it('in parts where several pay, up to the whole of it', () => {
    expect(granted(ask({ amount: 1000n })).amount).toBe(1000n);
    expect(granted(ask({ asked: 1000n })).amount).toBe(2000n);
  });

  it('no sooner due than it is asked for', () => {
    expect(granted(ask({ issuedOn: day('01-20') })).dueOn.toString()).toBe('2026-01-20');
  });

  it.each([
    ['twice', { asked: 3000n }, 'invoicing/deposit-asked', '/amount'],
    ['for more than is agreed', { amount: 3001n }, 'invoicing/deposit-asked', '/amount'],
    ['of nobody', { to: undefined }, 'invoicing/nobody-pays', '/payer'],
    ['before the agreement', { issuedOn: day('01-04') }, 'invoicing/issued-too-early', '/issuedOn'],
  ])('but not %s', (_, but, code, field) => {
    expect(ask(but)).toMatchObject({ code, field });
  });

  it('nor where none is agreed', () => {
    const engagement = twoHours();
    expect(ask({ engagement, statement: statementOfAll(engagement) })).toMatchObject({
      code: 'invoicing/no-deposit',
    });
  });
});

const awaited = { engagement: 'e1', party: 'p1', amount: 3000n, currency: POUND };
const money = { id: 'd1', receivedOn: day('01-07'), currency: POUND, method: 'bank transfer' } as const;

describe('a deposit is received', () => {
  it.each([
    ['in full', 3000n, 0n],
    ['in part', 1000n, 0n],
    ['with 5.00 too much, which is kept as credit', 3500n, 500n],
  ])('%s', (_, amount, credit) => {
    const deposit = granted(receiveDeposit({ ...money, amount }, awaited, { keepCredit: true, today }));
    expect(deposit).toEqual({ ...money, amount, engagement: 'e1', party: 'p1', credit });
  });

  it.each([
    ['with more than is awaited', { amount: 3001n }, 'invoicing/more-than-deposit', '/amount'],
    ['of nothing', { amount: 0n }, 'invoicing/no-payment', '/amount'],
    ['in another currency', { currency: granted(currency('EUR')) }, 'invoicing/other-currency', '/currency'],
    ['tomorrow', { receivedOn: day('12-31').add({ days: 1 }) }, 'invoicing/received-ahead', '/receivedOn'],
  ])('but not %s', (_, but, code, field) => {
    const answer = receiveDeposit({ ...money, amount: 3000n, ...but }, awaited, { keepCredit: false, today });
    expect(answer).toMatchObject({ code, field });
  });
});

const open: OpenInvoice = {
  ...{ invoice: 'i1', number: '2026-0001', owed: 12000n, currency: POUND, party: 'p1', engagement: 'e1' },
  ...{ issuedOn: day('02-10'), dueOn: day('03-12') },
};
const head = { id: 'a1', on: day('02-11') };

describe('a deposit that is held', () => {
  it('settles an invoice of its engagement', () => {
    expect(granted(applyDeposit(head, awaited, { open: [open], against: 'oldest first' }))).toMatchObject({
      engagement: 'e1',
      allocations: [{ invoice: 'i1', amount: 3000n }],
    });
  });

  it.each([
    ['another engagement’s', awaited, [{ ...open, engagement: 'e2' }], 'invoicing/nothing-open'],
    ['any where none is held', { ...awaited, amount: 0n }, [open], 'invoicing/no-deposit-held'],
  ])('but not %s', (_, held, invoices, code) => {
    expect(applyDeposit(head, held, { open: invoices, against: 'oldest first' })).toMatchObject({ code });
  });

  it('is paid back, as far as it is held', () => {
    const back = (amount: bigint) => returnDeposit({ ...head, amount, method: 'bank transfer' }, awaited);
    expect(granted(back(3000n))).toMatchObject({ engagement: 'e1', party: 'p1', amount: 3000n });
    const answer = back(3001n);
    expect(answer).toMatchObject({ code: 'invoicing/more-than-held', field: '/amount' });
    expect(refused(answer) && answer.sentence).toBe(
      '30.00 is held as a deposit. Pay back more than nothing and at most that.',
    );
  });
});

describe('what becomes of a deposit of 30.00', () => {
  const next = (
    counts: 'the final invoice' | 'the next invoice' | 'nothing',
    owed: bigint,
    done: boolean,
  ) => {
    const { apply, giveBack } = depositNext(awaited, {
      counts,
      open: owed > 0n ? [{ ...open, owed }] : [],
      done,
    });
    return [apply.reduce((sum, { amount }) => sum + amount, 0n), giveBack];
  };

  it.each([
    ['it waits while the work goes on', 'the final invoice', 12000n, false, [0n, 0n]],
    ['it settles the next invoice where that was agreed', 'the next invoice', 12000n, false, [3000n, 0n]],
    ['it settles the final invoice', 'the final invoice', 12000n, true, [3000n, 0n]],
    [
      'what the final invoice does not ask for is given back',
      'the final invoice',
      1000n,
      true,
      [1000n, 2000n],
    ],
    ['it is given back where nothing is owed in the end', 'nothing', 0n, true, [0n, 3000n]],
    [
      'though it counts towards nothing, it is there for what was not paid',
      'nothing',
      1000n,
      true,
      [1000n, 2000n],
    ],
  ] as const)('%s', (_, counts, owed, done, expected) => {
    expect(next(counts, owed, done)).toEqual(expected);
  });

  it('that is another payer’s stays theirs', () => {
    const theirs = { ...open, party: 'p2' };
    expect(depositNext(awaited, { counts: 'the final invoice', open: [theirs], done: true })).toEqual({
      apply: [],
      giveBack: 3000n,
    });
  });
});

describe('when an engagement is cancelled', () => {
  const held = { engagement: 'e1', party: 'p1', amount: 3000n, currency: POUND };
  const keeps: WrittenClause[] = [
    { id: 'fee', kind: 'hourly', terms: { price: '60.00', increment: 1 } },
    {
      id: 'notice',
      kind: 'cancellation',
      terms: {
        scale: [{ before: 48, owes: { owes: 'nothing' } }],
        otherwise: { owes: 'all' },
        keepsDeposit: true,
      },
    },
    quarter,
  ];
  const calls = [
    ['c1', 'rehearsal', '02-02T10:00'],
    ['c2', 'audition', '02-09T10:00'],
  ] as const;

  it('by the pianist, nothing is asked for and all of the deposit is given back', () => {
    const word = { at: at('02-01T10:00'), by: 'pianist', reason: 'illness' } as const;
    const fallen = granted(cancel(engaged(keeps, calls), word));
    expect(billable(statementOfAll(fallen), 'payer', []).total).toBe(0n);
    expect(depositNext(held, { counts: 'the final invoice', open: [], done: true })).toEqual({
      apply: [],
      giveBack: 3000n,
    });
  });

  it('in time by the payer, the deposit is kept where the clause says so: it is invoiced and applied', () => {
    const word = { at: at('01-20T10:00'), by: 'payer', reason: 'other' } as const;
    const fallen = granted(cancel(engaged(keeps, calls), word));
    const invoice = invoiced(fallen, '02-10');
    expect(invoice.total).toBe(3000n);
    const books = emptyBooks();
    const deposit = granted(receiveDeposit({ ...money, amount: 3000n }, held, { keepCredit: false, today }));
    books.enter({ kind: 'deposit', record: deposit });
    expect(figures(books.enter({ kind: 'invoice', record: invoice }))).toEqual([
      ['income cancellation', 'receivable p1 i1', 3000n],
    ]);
    const { apply, giveBack } = depositNext(held, {
      counts: 'the final invoice',
      open: [books.open(invoice)],
      done: true,
    });
    const kept = granted(applyDeposit(head, held, { open: [books.open(invoice)], against: apply }));
    books.enter({ kind: 'deposit applied', record: kept });
    expect([books.open(invoice).owed, books.deposit('e1'), giveBack]).toEqual([0n, 0n, 0n]);
  });

  it('one call late by the payer, half of it is owed and the rest of the deposit is given back', () => {
    const word = { at: at('02-08T10:00'), by: 'payer', reason: 'other' } as const;
    const one = engaged([...twoHours([quarter]).agreement.tariff.written.clauses], [calls[1]]);
    const fallen = granted(cancelCall(one, 'c2', word));
    const invoice = invoiced(fallen, '02-10');
    expect(invoice.total).toBe(3000n);
    // the deposit of this engagement, a quarter of 60.00, was 15.00; with 45.00 held, 15.00 would be given back
    const more = { ...held, amount: 4500n };
    const owed = { ...open, owed: invoice.total };
    expect(depositNext(more, { counts: 'the final invoice', open: [owed], done: true })).toEqual({
      apply: [{ invoice: 'i1', amount: 3000n }],
      giveBack: 1500n,
    });
  });
});

const pence = (text: string) => granted(fromDecimal(text, POUND));

/** Books in which a deposit came, an invoice was issued, and the deposit settles what it can of it. */
function settledBy(deposit: string, invoice: Invoice) {
  const books = emptyBooks();
  const held = { engagement: 'e1', party: 'p1', amount: pence(deposit), currency: POUND };
  const received = { ...money, receivedOn: day('03-01'), amount: held.amount };
  const record = granted(receiveDeposit(received, held, { keepCredit: false, today }));
  const came = books.enter({ kind: 'deposit', record });
  const issued = books.enter({ kind: 'invoice', record: invoice });
  const of = { open: [books.open(invoice)], against: 'oldest first' } as const;
  const head = { id: 'a1', on: invoice.issuedOn };
  const applied = books.enter({ kind: 'deposit applied', record: granted(applyDeposit(head, held, of)) });
  return { books, came, issued, applied };
}

/** A recital on 31 March for one price, with 20 % tax inside it where it is taxed. */
function recital(price: string, { taxed }: { taxed: boolean }) {
  const fee: WrittenClause = { id: 'fee', kind: 'fixed', terms: { price } };
  const tax: WrittenClause = { id: 'tax', kind: 'tax', terms: { name: 'VAT', rate: 2000, inside: true } };
  return engaged(taxed ? [fee, tax] : [fee], [['c1', 'recital', '03-31T10:00']]);
}

describe('as published examples have it', () => {
  it('a deposit is a liability when it is paid, and revenue once the work is performed', () => {
    const { amount } = published.contractLiability;
    const invoice = invoiced(recital(amount, { taxed: false }), '03-31');
    const { came, issued, applied } = settledBy(amount, invoice);
    expect(figures(came)).toEqual([['deposits held p1 e1', 'bank', pence(amount)]]);
    expect(figures(issued)).toEqual([['income performance', 'receivable p1 i1', pence(amount)]]);
    expect(figures(applied)).toEqual([['receivable p1 i1', 'deposits held p1 e1', pence(amount)]]);
  });

  it('the tax on a fee is one sum, whatever came before as a deposit', () => {
    const { fee, deposit, tax, balance } = published.depositThenBalance;
    const invoice = invoiced(recital(fee, { taxed: true }), '03-31');
    const { books } = settledBy(deposit, invoice);
    expect(invoice.tax).toBe(pence(tax));
    expect(books.open(invoice).owed).toBe(pence(balance));
  });

  it('tax is due on a deposit that is kept', () => {
    const { deposit, tax, income } = published.retainedDeposit;
    const keeps = { scale: [{ before: 48, owes: { owes: 'nothing' } }], otherwise: { owes: 'all' } };
    const quarter = { of: { as: 'share', share: 2500 }, due: [{ event: 'agreement', days: 3 }] };
    const agreed = engaged(
      [
        { id: 'fee', kind: 'fixed', terms: { price: '400.00' } },
        { id: 'notice', kind: 'cancellation', terms: { ...keeps, keepsDeposit: true } },
        { id: 'deposit', kind: 'deposit', terms: quarter },
        { id: 'tax', kind: 'tax', terms: { name: 'VAT', rate: 2000, inside: true } },
      ],
      [['c1', 'recital', '03-31T10:00']],
    );
    const word = { at: at('03-01T10:00'), by: 'payer', reason: 'other' } as const;
    const invoice = invoiced(granted(cancel(agreed, word)), '03-02');
    const { books, issued } = settledBy(deposit, invoice);
    expect(figures(issued)).toEqual([
      ['income cancellation', 'receivable p1 i1', pence(income)],
      ['tax collected VAT', 'receivable p1 i1', pence(tax)],
    ]);
    expect([books.open(invoice).owed, books.deposit('e1')]).toEqual([0n, 0n]);
  });
});
