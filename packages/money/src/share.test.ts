// Sharing out to the last cent, against published values.

import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import published from './published-values.json' with { type: 'json' };
import { allocate, apportion } from './share.ts';

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

describe('a sum is apportioned to amounts', () => {
  it.each<[string, bigint, bigint[], bigint[]]>([
    // 25.00 of a rehearsal of 40.00 and its premium of 10.00
    ['as a fee to what it was made of', 2500n, [4000n, 1000n], [2000n, 500n]],
    // 20.00 × 40/30, and 20.00 × −10/30: 26.666… and −6.666…, whose remainders are 2/3 and 1/3 of a cent
    ['also where something was taken off', 2000n, [4000n, -1000n], [2667n, -667n]],
    [
      'of what comes to less than nothing: 20.00 × 10/20 taken, 20.00 × 30/20 given',
      2000n,
      [1000n, -3000n],
      [-1000n, 3000n],
    ],
    ['equally where they come to nothing', 1000n, [0n, 0n, 0n], [334n, 333n, 333n]],
    ['to nobody where there is nobody', 1000n, [], []],
  ])('%s', (_, amount, to, parts) => {
    expect(apportion(amount, to)).toEqual(parts);
  });

  it('and the parts sum to it, and mirror what is paid back', () => {
    fc.assert(
      fc.property(fc.bigInt(), fc.array(fc.bigInt(), { minLength: 1, maxLength: 8 }), (amount, to) => {
        const parts = apportion(amount, to);
        expect(parts.reduce((sum, part) => sum + part, 0n)).toBe(amount);
        expect(apportion(-amount, to)).toEqual(parts.map((part) => -part));
      }),
    );
  });
});
