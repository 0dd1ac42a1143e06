import { granted } from '@colla/refusal';
import { add as addDinero, dinero, toSnapshot } from 'dinero.js/bigint';
import { EUR } from 'dinero.js/bigint/currencies';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { currency } from './currency.ts';
import { add, money, subtract, total } from './money.ts';

const euro = granted(currency('EUR'));
const yen = granted(currency('JPY'));

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
