import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { changesBy } from './difference.ts';
import { BANK, creditOf, income, owedBy, pence } from './told.fixture.ts';
import { mirror, move, type Transfer, transfer } from './transfer.ts';

const owed = owedBy('p1', 'i1');

describe('a transfer', () => {
  it('moves more than nothing from one account to another', () => {
    expect(transfer(pence(owed, BANK, 5000n))).toEqual({ from: owed, to: BANK, amount: 5000n, book: 5000n });
  });

  it.each([
    ['less than nothing', { from: owed, to: BANK, amount: -1n, book: 0n }, 'less than nothing'],
    ['less than nothing in the book', { from: owed, to: BANK, amount: 0n, book: -1n }, 'less than nothing'],
    ['nothing', { from: owed, to: BANK, amount: 0n, book: 0n }, 'of nothing'],
    ['where it came from', { from: owed, to: owedBy('p1', 'i1'), amount: 1n, book: 1n }, 'came from'],
  ])('of %s is never made', (_, of, why) => {
    expect(() => transfer(of)).toThrow(why);
  });
});

describe('a sum of either sign', () => {
  it('below nothing goes the other way', () => {
    expect(move({ from: income('rehearsal'), to: owed, amount: -1500n, book: -1500n })).toEqual([
      pence(owed, income('rehearsal'), 1500n),
    ]);
  });

  it('of nothing moves nothing', () => {
    expect(move(pence(owed, BANK, 0n))).toEqual([]);
  });

  it('that is above nothing in one currency and below in the other goes both ways', () => {
    expect(move({ from: owed, to: BANK, amount: 100n, book: -3n })).toEqual([
      { from: owed, to: BANK, amount: 100n, book: 0n },
      { from: BANK, to: owed, amount: 0n, book: 3n },
    ]);
  });

  const sum = fc.bigInt({ min: -(10n ** 12n), max: 10n ** 12n });

  it('changes both accounts by exactly itself', () => {
    fc.assert(
      fc.property(sum, sum, (amount, book) => {
        const changes = changesBy(move({ from: owed, to: BANK, amount, book }));
        const of = (account: unknown) =>
          changes.find((each) => each.account === account)?.change ?? { amount: 0n, book: 0n };
        expect([of(owed), of(BANK)]).toEqual([
          { amount: -amount, book: -book },
          { amount, book },
        ]);
      }),
    );
  });

  it('and its mirror undoes it', () => {
    const told = fc.array(fc.tuple(fc.constantFrom(BANK, owed, creditOf('p1')), sum, sum));
    fc.assert(
      fc.property(told, (all) => {
        const transfers: Transfer[] = all.flatMap(([from, amount, book]) =>
          move({ from, to: income('other'), amount, book }),
        );
        const changes = changesBy([...transfers, ...mirror(transfers)]);
        expect(changes.every(({ change }) => change.amount === 0n && change.book === 0n)).toBe(true);
      }),
    );
  });
});
