import { currency } from '@colla/money';
import { granted, refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import type { OpenInvoice } from './allocation.ts';
import { applyCredit, refund } from './credit.ts';
import { day, POUND } from './engaged.fixture.ts';

const open: OpenInvoice = {
  ...{ invoice: 'i1', number: '2026-0001', owed: 5000n, currency: POUND, party: 'p1', engagement: 'e1' },
  ...{ issuedOn: day('02-01'), dueOn: day('03-03') },
};
const credit = (amount: bigint) => ({ party: 'p1', amount, currency: POUND });
const head = { id: 'a1', on: day('02-20') };

describe('a payer’s credit settles invoices', () => {
  it('as far as it goes', () => {
    expect(granted(applyCredit(head, credit(2000n), { open: [open], against: 'oldest first' }))).toEqual({
      ...head,
      party: 'p1',
      currency: POUND,
      allocations: [{ invoice: 'i1', amount: 2000n }],
    });
  });

  it.each([
    ['where there is none', credit(0n), [open], 'invoicing/no-credit'],
    ['where a payment bounced that it came from', credit(-100n), [open], 'invoicing/no-credit'],
    ['where nothing is open', credit(100n), [], 'invoicing/nothing-open'],
    [
      'in another currency',
      { ...credit(100n), currency: granted(currency('EUR')) },
      [open],
      'invoicing/nothing-open',
    ],
  ])('but not %s', (_, means, open, code) => {
    expect(applyCredit(head, means, { open, against: 'oldest first' })).toMatchObject({ code });
  });

  it('nor by hand beyond what it comes to', () => {
    const against = [{ invoice: 'i1', amount: 101n }];
    expect(applyCredit(head, credit(100n), { open: [open], against })).toMatchObject({
      code: 'invoicing/beyond-the-money',
    });
  });
});

describe('a payer’s credit is refunded', () => {
  const pay = (amount: bigint, of = credit(2000n)) =>
    refund({ ...head, amount, method: 'bank transfer' }, of);

  it('all of it, or a part', () => {
    expect(granted(pay(2000n))).toEqual({
      ...head,
      amount: 2000n,
      method: 'bank transfer',
      party: 'p1',
      currency: POUND,
    });
    expect(granted(pay(1n)).amount).toBe(1n);
  });

  it('and never more than it comes to, nor nothing', () => {
    const answer = pay(2001n);
    expect(answer).toMatchObject({ code: 'invoicing/more-than-credit', field: '/amount' });
    expect(refused(answer) && answer.sentence).toBe(
      'The credit is 20.00. Pay back more than nothing and at most that.',
    );
    expect(pay(0n)).toMatchObject({ code: 'invoicing/more-than-credit' });
    expect(pay(1n, credit(0n))).toMatchObject({ code: 'invoicing/no-credit' });
  });
});
