import { currency } from '@colla/money';
import { granted, refused } from '@colla/refusal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { allocated, fill, type OpenInvoice, setAgainst } from './allocation.ts';
import { day, POUND } from './engaged.fixture.ts';

const EURO = granted(currency('EUR'));

function open(invoice: string, owed: bigint, issued: string, but: Partial<OpenInvoice> = {}): OpenInvoice {
  return {
    ...{ invoice, number: `2026-${invoice}`, owed, currency: POUND, party: 'p1', engagement: 'e1' },
    issuedOn: day(issued),
    dueOn: day(issued).add({ days: 30 }),
    ...but,
  };
}

const march = open('i2', 3000n, '03-01');
const february = open('i1', 5000n, '02-01');
const april = open('i3', 2000n, '04-01');
const others = open('i4', 9000n, '01-01', { party: 'p2' });
const euro = open('i5', 9000n, '01-01', { currency: EURO });
const all = [march, february, april, others, euro];
const means = (amount: bigint) => ({ party: 'p1', amount, currency: POUND });

describe('money is set against the oldest invoice first', () => {
  it.each([
    ['of less than the first', 4000n, [['i1', 4000n]]],
    [
      'of the first and a part of the second',
      6000n,
      [
        ['i1', 5000n],
        ['i2', 1000n],
      ],
    ],
    [
      'of more than all of them',
      99000n,
      [
        ['i1', 5000n],
        ['i2', 3000n],
        ['i3', 2000n],
      ],
    ],
  ])('%s', (_, amount, expected) => {
    const allocations = granted(setAgainst(means(amount), all, 'oldest first'));
    expect(allocations.map((of) => [of.invoice, of.amount])).toEqual(expected);
  });

  it('on one day by its number', () => {
    const [second, first] = [open('b', 100n, '02-01'), open('a', 100n, '02-01')];
    expect(granted(setAgainst(means(100n), [second, first], 'oldest first'))).toEqual([
      { invoice: 'a', amount: 100n },
    ]);
  });

  it('and one that is paid takes nothing', () => {
    expect(fill(100n, [open('i1', 0n, '02-01'), march])).toEqual([{ invoice: 'i2', amount: 100n }]);
  });
});

describe('money is set against invoices by hand', () => {
  it('as somebody chose, and may leave a rest', () => {
    const chosen = [
      { invoice: 'i3', amount: 2000n },
      { invoice: 'i1', amount: 500n },
    ];
    expect(granted(setAgainst(means(4000n), all, chosen))).toEqual(chosen);
  });

  it.each([
    ['beyond what an invoice is owed', [['i1', 5001n]], 'invoicing/more-than-owed', '/allocations/0/amount'],
    [
      'beyond the money',
      [
        ['i1', 3000n],
        ['i2', 1001n],
      ],
      'invoicing/beyond-the-money',
      '/allocations',
    ],
    ['for nothing', [['i1', 0n]], 'invoicing/allocated-nothing', '/allocations/0/amount'],
    [
      'below nothing',
      [
        ['i2', 10n],
        ['i1', -10n],
      ],
      'invoicing/allocated-nothing',
      '/allocations/1/amount',
    ],
    [
      'twice for one invoice',
      [
        ['i1', 10n],
        ['i1', 10n],
      ],
      'invoicing/allocated-twice',
      '/allocations/1/invoice',
    ],
    ['for another payer’s invoice', [['i4', 10n]], 'invoicing/other-payer', '/allocations/0/invoice'],
    ['in another currency', [['i5', 10n]], 'invoicing/other-currency', '/allocations/0/currency'],
    ['for an invoice that is not there', [['i9', 10n]], 'invoicing/not-open', '/allocations/0/invoice'],
  ] as const)('never %s', (_, chosen, code, field) => {
    const against = chosen.map(([invoice, amount]) => ({ invoice, amount }));
    expect(setAgainst(means(4000n), all, against)).toMatchObject({ code, field });
  });

  it('and the sentence says by how much it is too much', () => {
    const against = [{ invoice: 'i1', amount: 5050n }];
    const [owed, money] = [
      setAgainst(means(9000n), all, against),
      setAgainst(means(5000n), [open('i1', 9000n, '02-01')], against),
    ];
    expect([owed, money].map((answer) => refused(answer) && answer.sentence)).toEqual([
      'Only 50.00 is owed on invoice 2026-i1, and 50.50 is set against it. Set at most 50.00.',
      'The invoices chosen take 50.50, and there is 50.00. Take off 0.50.',
    ]);
  });
});

it('however much there is, no invoice gets more than it is owed, and an older one is full before a younger gets anything', () => {
  const invoices = fc.array(fc.bigInt({ min: 0n, max: 9999n }), { minLength: 1, maxLength: 8 });
  fc.assert(
    fc.property(fc.bigInt({ min: 1n, max: 40_000n }), invoices, (amount, owed) => {
      const open_ = owed.map((of, index) => open(`i${index}`, of, `02-0${index + 1}`));
      const allocations = granted(setAgainst(means(amount), open_, 'oldest first'));
      const due = owed.reduce((so, of) => so + of, 0n);
      const enough = due <= amount;
      expect(allocated(allocations)).toBe(enough ? due : amount);
      for (const [index, { invoice, amount }] of allocations.entries()) {
        const of = open_.find((each) => each.invoice === invoice)?.owed ?? 0n;
        expect(amount > 0n && (index === allocations.length - 1 ? amount <= of : amount === of)).toBe(true);
      }
    }),
  );
});
