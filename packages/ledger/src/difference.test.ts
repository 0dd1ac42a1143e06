import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { accountKey } from './account.ts';
import { changesBy, realised } from './difference.ts';
import { BANK, creditOf, depositFor, income, owedBy } from './told.fixture.ts';
import { move, NOTHING, type Sum, type Transfer } from './transfer.ts';

const owed = owedBy('p1', 'i1');
const DIFFERENCE = { purpose: 'exchange difference' } as const;

/** An invoice of 100.00 euro that stands at 85.00 pounds. */
const standing = (account: { purpose: string }): Sum =>
  account.purpose === 'receivable' ? { amount: 10000n, book: 8500n } : NOTHING;

describe('an invoice of 100.00 euro that stands at 85.00 pounds', () => {
  it.each([
    ['paid when it is worth 80.00 loses 5.00', 10000n, 8000n, { from: owed, to: DIFFERENCE, book: 500n }],
    ['paid when it is worth 91.00 gains 6.00', 10000n, 9100n, { from: DIFFERENCE, to: owed, book: 600n }],
    // 40.00 of it stands at 34.00
    ['paid in part, 40.00 worth 32.00, loses 2.00', 4000n, 3200n, { from: owed, to: DIFFERENCE, book: 200n }],
    // a third: 33.33 stands at 28.3305
    ['paid in part, 33.33 worth 28.33, loses nothing', 3333n, 2833n, undefined],
  ])('%s', (_, amount, book, difference) => {
    const paid = [{ from: owed, to: BANK, amount, book }];
    expect(realised(paid, standing)).toEqual(difference ? [{ amount: 0n, ...difference }] : []);
  });

  it('asked for more of adds at the rate of that day', () => {
    expect(realised([{ from: income('other'), to: owed, amount: 5000n, book: 4100n }], standing)).toEqual([]);
  });

  it('settled beyond nothing is owed back at the rate of that day', () => {
    // 150.00 at 0.80 is 120.00: 100.00 of it meets the 85.00, 50.00 of it is 40.00 owed back
    const beyond = [{ from: owed, to: BANK, amount: 15000n, book: 12000n }];
    expect(realised(beyond, standing)).toEqual([{ from: owed, to: DIFFERENCE, amount: 0n, book: 500n }]);
  });
});

it('what lies at the bank and what is earned never differ', () => {
  expect(realised([{ from: income('other'), to: BANK, amount: 10000n, book: 9000n }], standing)).toEqual([]);
});

describe('whatever is asked for, settled, paid back and asked for again, at whatever rates', () => {
  const settled = [owed, creditOf('p1'), depositFor('e1', 'p1')];
  const step = fc.record({
    account: fc.constantFrom(...settled),
    other: fc.constantFrom(BANK, ...settled),
    amount: fc.bigInt({ min: -100_000n, max: 100_000n }),
    percent: fc.bigInt({ min: 1n, max: 400n }),
  });

  it('an account that holds nothing stands at nothing in the book', () => {
    fc.assert(
      fc.property(fc.array(step, { maxLength: 30 }), (steps) => {
        const held = new Map<string, Sum>();
        const before = (account: Transfer['from']) => held.get(accountKey(account)) ?? NOTHING;
        const post = (transfers: readonly Transfer[]) => {
          for (const { account, change } of changesBy([...transfers, ...realised(transfers, before)])) {
            const { amount, book } = before(account);
            held.set(accountKey(account), { amount: amount + change.amount, book: book + change.book });
          }
        };
        const pay = (from: Transfer['from'], to: Transfer['from'], amount: bigint, percent: bigint) =>
          post(move({ from, to, amount, book: (amount * percent) / 100n }));
        for (const { account, other, amount, percent } of steps)
          if (account !== other) pay(account, other, amount, percent);
        for (const account of settled) pay(account, BANK, before(account).amount, 77n);
        expect(settled.map(before)).toEqual(settled.map(() => NOTHING));
      }),
    );
  });
});
