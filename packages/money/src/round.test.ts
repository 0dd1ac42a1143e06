import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import published from './published-values.json' with { type: 'json' };
import { divideRounded, shareOf } from './round.ts';

/** `-2.5` as the exact quotient −25 / 10. */
function asTenths(decimal: string): bigint {
  return BigInt(decimal.replace('.', ''));
}

describe('a quotient is rounded to whole minor units, ties away from zero', () => {
  it.each(published.rounding.values)('as in the Java table: $value is $half_up', ({ value, half_up }) => {
    expect(divideRounded(asTenths(value), 10n)).toBe(BigInt(half_up));
  });

  it.each(published.databaseRounding.values)(
    'as PostgreSQL does: $value is $rounded',
    ({ value, rounded }) => {
      expect(divideRounded(asTenths(value), 10n)).toBe(BigInt(rounded));
    },
  );

  it.each([
    // 1 / 3 = 0.33; 2 / 3 = 0.67; 3 / 2 = 1.5 away from zero; the odd denominator has no tie
    [1n, 3n, 0n],
    [2n, 3n, 1n],
    [3n, 2n, 2n],
    [-3n, 2n, -2n],
    [5n, 7n, 1n],
    [-4n, 9n, 0n],
  ])('%d / %d is %d', (numerator, denominator, whole) => {
    expect(divideRounded(numerator, denominator)).toBe(whole);
  });
});

describe('tax on a sum', () => {
  const cents = (text: string) => BigInt(text.replace('.', ''));

  it.each(published.taxOnTop.values)('$rate % on top of $net is $nearest', ({ net, rate, nearest }) => {
    expect(shareOf(cents(net), Number(rate) * 100)).toBe(cents(nearest));
  });

  it.each(published.taxInside.values)(
    '$rate % inside $gross is $tax and leaves $net',
    ({ gross, rate, tax, net }) => {
      const inside = divideRounded(cents(gross) * BigInt(rate), 100n + BigInt(rate));
      expect(inside).toBe(cents(tax));
      expect(cents(gross) - inside).toBe(cents(net));
    },
  );
});

it('a refund mirrors its charge', () => {
  fc.assert(
    fc.property(fc.bigInt(), fc.bigInt({ min: 1n }), (amount, of) => {
      expect(divideRounded(-amount, of)).toBe(-divideRounded(amount, of));
    }),
  );
});

it('no quotient is moved by more than half a unit', () => {
  fc.assert(
    fc.property(fc.bigInt(), fc.bigInt({ min: 1n }), (amount, of) => {
      const off = 2n * (divideRounded(amount, of) * of - amount);
      expect(off <= of && off >= -of).toBe(true);
    }),
  );
});

it('a share of nobody is no share', () => {
  expect(() => divideRounded(100n, 0n)).toThrow('cannot share by 0');
});
