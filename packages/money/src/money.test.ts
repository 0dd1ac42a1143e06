import { granted } from '@colla/refusal';
import { add as addDinero, dinero, toSnapshot } from 'dinero.js/bigint';
import { EUR } from 'dinero.js/bigint/currencies';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { currency } from './currency.ts';
import { add, allocate, money, subtract, total } from './money.ts';
import published from './published-values.json' with { type: 'json' };

const euro = granted(currency('EUR'));
const yen = granted(currency('JPY'));

describe('a sum is shared out to the last cent', () => {
  it.each(published.allocation.values)('$total by $weights is $shares', ({ total, weights, shares }) => {
    expect(allocate(BigInt(total), weights)).toEqual(shares.map(BigInt));
  });

  it.each([
    // exact 0.91, 1.82, 2.73, 4.55: three cents are left for the three largest remainders
    [10n, [1, 2, 3, 5], [1n, 2n, 3n, 4n]],
    // 33.33 and 66.67: the odd cent goes to the larger remainder, not to the first
    [100n, [1, 2], [33n, 67n]],
    // 547.45 between two: the tie goes to the first
    [54745n, [1, 1], [27373n, 27372n]],
    [54745n, [1], [54745n]],
  ])('%s by %s is %s', (amount, weights, shares) => {
    expect(allocate(amount, weights)).toEqual(shares);
  });

  const weights = fc
    .array(fc.nat(1000), { minLength: 1, maxLength: 12 })
    .filter((all) => all.some((one) => one > 0));

  it('and the parts sum to it', () => {
    fc.assert(
      fc.property(fc.bigInt(), weights, (amount, all) => {
        expect(allocate(amount, all).reduce((sum, part) => sum + part, 0n)).toBe(amount);
      }),
    );
  });

  it('and a refund is shared as the charge was', () => {
    fc.assert(
      fc.property(fc.bigInt(), weights, (amount, all) => {
        expect(allocate(-amount, all)).toEqual(allocate(amount, all).map((part) => -part));
      }),
    );
  });

  it('and nobody is more than a cent from their exact share', () => {
    fc.assert(
      fc.property(fc.bigInt({ min: 0n, max: 10n ** 15n }), weights, (amount, all) => {
        const whole = BigInt(all.reduce((sum, weight) => sum + weight, 0));
        for (const [index, part] of allocate(amount, all).entries()) {
          const off = part * whole - amount * BigInt(all[index] ?? 0);
          expect(off < whole && off > -whole).toBe(true);
        }
      }),
    );
  });

  it('and somebody must be there to share with, none of them for less than nothing', () => {
    expect(() => allocate(100n, [0, 0])).toThrow('nobody to share with');
    expect(() => allocate(100n, [])).toThrow('nobody to share with');
    expect(() => allocate(100n, [2, -1])).toThrow('less than nothing');
  });
});

describe('money adds up', () => {
  it('in one currency', () => {
    expect(add(money(1250n, euro), money(-50n, euro))).toEqual({ amount: 1200n, currency: 'EUR' });
    expect(subtract(money(1250n, euro), money(1300n, euro))).toEqual({ amount: -50n, currency: 'EUR' });
    expect(total([money(1n, euro), money(2n, euro), money(3n, euro)], euro).amount).toBe(6n);
    expect(total([], yen)).toEqual({ amount: 0n, currency: 'JPY' });
  });

  it('and never across two', () => {
    expect(() => add(money(1n, euro), money(1n, yen))).toThrow('EUR and JPY do not mix');
    expect(() => subtract(money(1n, euro), money(1n, yen))).toThrow('EUR and JPY do not mix');
    expect(() => total([money(1n, euro)], yen)).toThrow('JPY and EUR do not mix');
  });

  it('as dinero.js adds it, however large', () => {
    fc.assert(
      fc.property(fc.bigInt(), fc.bigInt(), (a, b) => {
        const reference = addDinero(
          dinero({ amount: a, currency: EUR }),
          dinero({ amount: b, currency: EUR }),
        );
        expect(add(money(a, euro), money(b, euro)).amount).toBe(toSnapshot(reference).amount);
      }),
    );
  });
});
