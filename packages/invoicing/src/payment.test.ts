import { currency } from '@colla/money';
import { granted, refused } from '@colla/refusal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { OpenInvoice } from './allocation.ts';
import { day, POUND } from './engaged.fixture.ts';
import { receive, receiveFor } from './payment.ts';

const received = {
  id: 'y1',
  receivedOn: day('02-20'),
  amount: 5000n,
  currency: POUND,
  method: 'bank transfer',
  reference: 'Order 7',
} as const;
const owed = { invoice: 'i1', number: '2026-0007', owed: 5000n, currency: POUND, party: 'p1' } as const;

const today = day('02-21');

describe('a payment', () => {
  it.each([
    ['of all that is owed fills the invoice', 5000n, false, 5000n, 0n],
    ['of less is a part', 2000n, false, 2000n, 0n],
    ['of more keeps the rest as credit where that is said', 5250n, true, 5000n, 250n],
    ['of less leaves no credit, even where it may', 2000n, true, 2000n, 0n],
  ])('%s', (_, amount, keepCredit, allocated, credit) => {
    expect(granted(receive({ ...received, amount }, owed, { keepCredit, today }))).toEqual({
      ...received,
      amount,
      party: 'p1',
      allocations: [{ invoice: 'i1', amount: allocated }],
      credit,
    });
  });

  it('for an invoice that is paid already is all credit', () => {
    expect(granted(receive(received, { ...owed, owed: 0n }, { keepCredit: true, today }))).toMatchObject({
      allocations: [],
      credit: 5000n,
    });
  });

  it('of more than is owed is never lost: it is kept as credit or corrected', () => {
    const answer = receive({ ...received, amount: 5250n }, owed, { keepCredit: false, today });
    expect(answer).toMatchObject({
      code: 'invoicing/more-than-owed',
      facts: { owed: '50.00', over: '2.50', invoice: 'i1' },
      field: '/amount',
    });
    expect(refused(answer) && answer.sentence).toBe(
      'Only 50.00 is owed on invoice 2026-0007. Keep the other 2.50 as credit, or correct the amount.',
    );
  });

  it.each([0n, -1n])('of %d is none', (amount) => {
    expect(receive({ ...received, amount }, owed, { keepCredit: true, today })).toMatchObject({
      code: 'invoicing/no-payment',
      field: '/amount',
    });
  });

  it('in another currency is entered as what it came to', () => {
    const answer = receive({ ...received, currency: granted(currency('EUR')) }, owed, {
      keepCredit: true,
      today,
    });
    expect(answer).toMatchObject({ code: 'invoicing/other-currency', field: '/currency' });
    expect(refused(answer) && answer.sentence).toContain('Enter what it came to in GBP.');
  });

  it('is all accounted for, and never fills an invoice beyond what is owed', () => {
    const minor = fc.bigInt({ min: 1n, max: 10n ** 12n });
    fc.assert(
      fc.property(minor, fc.bigInt({ min: 0n, max: 10n ** 12n }), (amount, open) => {
        const payment = granted(
          receive({ ...received, amount }, { ...owed, owed: open }, { keepCredit: true, today }),
        );
        const allocated = payment.allocations.reduce((sum, { amount }) => sum + amount, 0n);
        expect(allocated + payment.credit).toBe(amount);
        expect(allocated <= open && payment.credit >= 0n).toBe(true);
      }),
    );
  });
});

describe('a payment for several invoices', () => {
  const open = (invoice: string, owed: bigint, issued: string): OpenInvoice => ({
    ...{ invoice, number: `2026-${invoice}`, owed, currency: POUND, party: 'p1', engagement: 'e1' },
    ...{ issuedOn: day(issued), dueOn: day(issued).add({ days: 30 }) },
  });
  const invoices = [open('i2', 3000n, '02-10'), open('i1', 4000n, '02-01')];
  const from = { party: 'p1', open: invoices, against: 'oldest first' } as const;
  const today = day('12-31');

  it('fills the oldest first', () => {
    expect(granted(receiveFor(received, from, { keepCredit: false, today }))).toEqual({
      ...received,
      party: 'p1',
      allocations: [
        { invoice: 'i1', amount: 4000n },
        { invoice: 'i2', amount: 1000n },
      ],
      credit: 0n,
    });
  });

  it('goes where somebody puts it, the rest as credit where that is said', () => {
    const against = [{ invoice: 'i2', amount: 2000n }];
    const payment = receiveFor(received, { ...from, against }, { keepCredit: true, today });
    expect(granted(payment)).toMatchObject({ allocations: against, credit: 3000n });
  });

  it('on account is all credit', () => {
    expect(granted(receiveFor(received, { ...from, open: [] }, { keepCredit: true, today }))).toMatchObject({
      allocations: [],
      credit: 5000n,
    });
  });

  it.each([
    ['of more than is owed', { amount: 7001n }, 'invoicing/more-than-owed', '/amount'],
    ['of nothing', { amount: 0n }, 'invoicing/no-payment', '/amount'],
    [
      'that has not come yet',
      { receivedOn: today.add({ days: 1 }) },
      'invoicing/received-ahead',
      '/receivedOn',
    ],
  ])('%s is refused', (_, but, code, field) => {
    const answer = receiveFor({ ...received, ...but }, from, { keepCredit: false, today });
    expect(answer).toMatchObject({ code, field });
  });

  it('with a rest says how much it is', () => {
    const answer = receiveFor({ ...received, amount: 7001n }, from, { keepCredit: false, today });
    expect(refused(answer) && answer.sentence).toBe(
      '0.01 of this is set against no invoice. Keep it as the payer’s credit, or correct the amount.',
    );
  });
});
