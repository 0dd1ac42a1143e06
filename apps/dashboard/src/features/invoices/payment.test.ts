// Money received is read as it is typed, and told as it stands.

import { describe, expect, it } from 'vitest';
import { overpaid, paymentOf, startPayment } from './payment.ts';
import { sayStanding } from './standing.ts';

const invoice = { owed: '136.25', currency: 'GBP' };

describe('a payment', () => {
  const start = startPayment(invoice, '2026-07-01');

  it('starts from all that is owed, by bank transfer, today', () => {
    expect(paymentOf(start, invoice, { book: 'GBP', keepCredit: false })).toEqual({
      body: { receivedOn: '2026-07-01', amount: '136.25', method: 'bank transfer' },
    });
  });

  it('of 45 typed is 45.00', () => {
    expect(paymentOf({ ...start, amount: '45' }, invoice, { book: 'GBP', keepCredit: false })).toMatchObject({
      body: { amount: '45.00' },
    });
  });

  it('in another currency than the books goes with its rate, whose comma is the decimal mark', () => {
    const rate = { rate: '0,8567', on: '2026-07-01', source: ' The bank ' };
    const kept = { rate: '0.8567', on: '2026-07-01', source: 'The bank' };
    const sent = paymentOf({ ...start, rate }, { currency: 'EUR' }, { book: 'GBP', keepCredit: false });
    expect(sent).toMatchObject({ body: { rate: kept } });
  });

  it('without an amount is asked for one, beside it', () => {
    expect(paymentOf({ ...start, amount: ' ' }, invoice, { book: 'GBP', keepCredit: false })).toEqual({
      wrong: { pointer: '/amount', detail: 'Enter what was received.' },
    });
  });

  it('of more than is owed offers the rest as credit', () => {
    const problem = {
      type: '/api/problems/invoicing/more-than-owed',
      title: 'More than owed',
      status: 409,
      detail: 'Only 136.25 is owed.',
      facts: { over: '13.75' },
    };
    expect(overpaid(problem)).toBe('13.75');
    expect(paymentOf({ ...start, amount: '150' }, invoice, { book: 'GBP', keepCredit: true })).toMatchObject({
      body: { keepCredit: true },
    });
  });
});

describe('an invoice', () => {
  it.each([
    ['open', '2026-07-06', 'due in 5 days'],
    ['open', '2026-07-01', 'due today'],
    ['overdue', '2026-06-30', 'overdue by one day'],
    ['overdue', '2026-06-19', 'overdue by 12 days'],
    ['part paid', '2026-07-02', 'part paid, due in one day'],
    ['paid', '2026-06-19', 'paid'],
  ] as const)('that is %s and due on %s stands “%s” on the first of July', (is, dueOn, words) => {
    expect(sayStanding({ is, dueOn }, '2026-07-01')).toBe(words);
  });
});
