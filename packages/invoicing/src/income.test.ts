import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { InvoiceLine, InvoiceTax } from './billable.ts';
import { earned, shareOut } from './income.ts';

const line = (category: InvoiceLine['category'], amount: bigint): InvoiceLine => ({
  key: `${category} ${amount}`,
  clause: 'fee',
  category,
  what: category,
  calls: [],
  facts: [],
  quantity: { count: 1, of: 1 },
  unit: 'call',
  rate: amount,
  amount,
  arithmetic: '',
});
const tax = (amount: bigint, but: Partial<InvoiceTax> = {}): InvoiceTax => ({
  name: 'VAT',
  rate: 2000,
  code: 'S',
  inside: true,
  base: 0n,
  amount,
  ...but,
});
const told = (lines: InvoiceLine[], taxes: InvoiceTax[] = []) =>
  earned({ lines, taxes }).map(({ account, amount }) => [
    account.purpose === 'income' ? account.kind : account.purpose,
    amount,
  ]);

describe('a document is earned', () => {
  it('by the kinds of its lines', () => {
    const lines = [
      line('rehearsal', 6000n),
      line('performance', 20000n),
      line('rehearsal', 3000n),
      line('entitlement', 4000n),
      line('package', 15000n),
      line('travel', 2250n),
      line('cost', 1280n),
      line('discount', -1000n),
    ];
    expect(told(lines)).toEqual([
      ['rehearsal', 9000n],
      ['performance', 20000n],
      ['package', 19000n],
      ['travel recovered', 2250n],
      ['costs recovered', 1280n],
      ['discount', -1000n],
    ]);
  });

  it('with tax on top beside it', () => {
    expect(told([line('rehearsal', 6000n)], [tax(1200n, { inside: false })])).toEqual([
      ['rehearsal', 6000n],
      ['tax collected', 1200n],
    ]);
  });

  // HMRC Revenue and Customs Brief 13 (2018): 100.00 kept, 20 % inside, holds 16.67 and leaves 83.33.
  it('less the tax inside it: a deposit of 100.00 that is kept earns 83.33', () => {
    expect(told([line('cancellation', 10000n)], [tax(1667n)])).toEqual([
      ['cancellation', 8333n],
      ['tax collected', 1667n],
    ]);
  });

  it('less tax in proportion: 20.00 inside 90.00 and 30.00 is 15.00 and 5.00', () => {
    expect(told([line('performance', 9000n), line('rehearsal', 3000n)], [tax(2000n)])).toEqual([
      ['performance', 7500n],
      ['rehearsal', 2500n],
      ['tax collected', 2000n],
    ]);
  });

  it('to the last penny: 0.05 inside 0.10, 0.10 and 0.10 is 0.02, 0.02 and 0.01', () => {
    const lines = [line('performance', 10n), line('rehearsal', 10n), line('other', 10n)];
    expect(told(lines, [tax(5n)])).toEqual([
      ['performance', 8n],
      ['rehearsal', 8n],
      ['other', 9n],
      ['tax collected', 5n],
    ]);
  });

  it('less tax only of the lines it is on', () => {
    const lines = [line('performance', 12000n), line('travel', 2250n)];
    expect(told(lines, [tax(2000n, { not: ['travel'] })])).toEqual([
      ['performance', 10000n],
      ['travel recovered', 2250n],
      ['tax collected', 2000n],
    ]);
  });

  it('with its discount less of its tax: 15.00 inside 120.00 and 30.00 off is 20.00 and 5.00 off', () => {
    expect(told([line('performance', 12000n), line('discount', -3000n)], [tax(1500n)])).toEqual([
      ['performance', 10000n],
      ['discount', -2500n],
      ['tax collected', 1500n],
    ]);
  });

  it('at its first kind where a penny of tax is left and the lines come to nothing', () => {
    expect(told([line('performance', 6000n), line('rehearsal', -6000n)], [tax(1n)])).toEqual([
      ['performance', 5999n],
      ['rehearsal', -6000n],
      ['tax collected', 1n],
    ]);
  });
});

describe('whatever the lines and taxes are', () => {
  const amount = fc.bigInt({ min: -(10n ** 9n), max: 10n ** 9n });
  const lines = fc.array(
    fc
      .tuple(fc.constantFrom('rehearsal', 'discount', 'travel', 'other'), amount)
      .map(([of, sum]) => line(of, sum)),
    { maxLength: 6 },
  );
  const taxes = fc.array(
    fc
      .tuple(amount, fc.boolean(), fc.subarray<InvoiceLine['category']>(['travel', 'other']))
      .map(([sum, inside, not]) => tax(sum, { inside, not })),
    { maxLength: 3 },
  );
  const sum = (all: readonly { amount: bigint }[]) => all.reduce((so, { amount }) => so + amount, 0n);

  it('income and taxes together are what is asked for', () => {
    fc.assert(
      fc.property(lines, taxes, (lines, taxes) => {
        const onTop = taxes.filter(({ inside }) => !inside);
        expect(sum(earned({ lines, taxes }))).toBe(sum(lines) + sum(onTop));
      }),
    );
  });

  it('and a credit for all of it undoes it exactly', () => {
    const undone = <Of extends { amount: bigint }>(all: readonly Of[]) =>
      all.map((of) => ({ ...of, amount: -of.amount }));
    fc.assert(
      fc.property(lines, taxes, (lines, taxes) => {
        const credit = earned({ lines: undone(lines), taxes: undone(taxes) });
        expect(credit).toEqual(undone(earned({ lines, taxes })));
      }),
    );
  });
});

it('a sum is shared out to the last unit, below nothing too', () => {
  // 10 by 7 and −2 is exactly 14 and −4; by 3, 3 and −1 it is 6, 6 and −2
  expect(shareOut(10n, [7n, -2n])).toEqual([14n, -4n]);
  expect(shareOut(10n, [3n, 3n, -1n])).toEqual([6n, 6n, -2n]);
  // 1 by 2, 2 and −1 is 2/3, 2/3 and −1/3: the floors are 0, 0 and −1, and the two ahead have the larger remainders
  expect(shareOut(1n, [2n, 2n, -1n])).toEqual([1n, 1n, -1n]);
  expect(shareOut(-1n, [2n, 2n, -1n])).toEqual([-1n, -1n, 1n]);
  expect(shareOut(5n, [0n, 0n])).toEqual([5n, 0n]);
});
