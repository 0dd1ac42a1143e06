import { granted, refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import type { OpenInvoice } from './allocation.ts';
import { day, POUND } from './engaged.fixture.ts';
import { shortBy, writeOff } from './write-off.ts';

const open: OpenInvoice = {
  ...{ invoice: 'i1', number: '2026-0001', owed: 5000n, currency: POUND, party: 'p1', engagement: 'e1' },
  ...{ issuedOn: day('02-01'), dueOn: day('03-03') },
};
const given = { id: 'w1', on: day('03-10'), amount: 30n, reason: 'bank charges' } as const;

describe('what is owed is given up', () => {
  it('with a reason', () => {
    expect(granted(writeOff({ ...given, note: 'Sender’s bank' }, open))).toEqual({
      ...given,
      ...{ note: 'Sender’s bank', invoice: 'i1', engagement: 'e1', party: 'p1', currency: POUND },
    });
  });

  it.each([
    ['more than is owed', { amount: 5001n }, 'invoicing/not-to-write-off', '/amount'],
    ['nothing', { amount: 0n }, 'invoicing/not-to-write-off', '/amount'],
    ['before the invoice', { on: day('01-31') }, 'invoicing/written-off-too-early', '/on'],
  ])('but never %s', (_, but, code, field) => {
    expect(writeOff({ ...given, ...but }, open)).toMatchObject({ code, field });
  });

  it('and the sentence says how much can be', () => {
    const answer = writeOff({ ...given, amount: 5001n }, open);
    expect(refused(answer) && answer.sentence).toBe(
      '50.00 is owed on invoice 2026-0001. Write off more than nothing and at most that.',
    );
  });
});

describe('a payment that comes short by a little proposes to give up the rest', () => {
  const paid = (amount: bigint) => ({ allocations: [{ invoice: 'i1', amount }] });

  it.each([
    ['short by 0.50', 4950n, [{ invoice: 'i1', amount: 50n }]],
    ['short by 0.51', 4949n, []],
    ['in full', 5000n, []],
  ])('within 0.50: %s', (_, amount, proposed) => {
    expect(shortBy(paid(amount), [open], 50n)).toEqual(proposed);
  });
});
