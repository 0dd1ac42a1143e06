import { granted, refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { currencies, currency, LOAD, measure, minorDigits } from './currency.ts';
import published from './published-values.json' with { type: 'json' };

const { zero, two, three, four, none } = published.minorUnits;

describe('a currency has the decimals that ISO 4217 lists', () => {
  it.each([
    [0, zero],
    [2, two],
    [3, three],
    [4, four],
  ] as const)('%i: %j', (digits, codes) => {
    expect(codes.map((code) => [code, minorDigits(granted(currency(code)))])).toEqual(
      codes.map((code) => [code, digits]),
    );
  });

  it('and every other one has two', () => {
    const odd = new Set([...zero, ...three, ...four]);
    const others = currencies().filter((code) => !odd.has(code));
    expect(others.filter((code) => minorDigits(code) !== 2)).toEqual([]);
    expect(others).toContain('MRU');
    expect(others).toContain('MGA');
  });
});

it('gold, drawing rights and test codes are no money to invoice in', () => {
  expect(none.filter((code) => !refused(currency(code)))).toEqual([]);
});

it.each(['eur', 'EURO', '€', '', 'XYZ', 'constructor'])('“%s” is refused by name', (code) => {
  expect(currency(code)).toMatchObject({ code: 'money/unknown-currency', facts: { code } });
});

it('load is counted in hundredths of an hour, and is no money to invoice in', () => {
  expect(measure('load')).toBe(LOAD);
  expect(minorDigits(LOAD)).toBe(2);
  expect(refused(currency('load'))).toBe(true);
  expect(currencies()).not.toContain(LOAD);
  expect(measure('EUR')).toBe('EUR');
});

it('currencies are offered in the order of the alphabet', () => {
  expect([...currencies()].sort()).toEqual(currencies());
});
