import { granted, refused } from '@colla/refusal';
import { dinero, toDecimal as toDecimalDinero } from 'dinero.js/bigint';
import * as table from 'dinero.js/bigint/currencies';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { currencies, currency, LOAD, minorDigits } from './currency.ts';
import { money } from './money.ts';
import published from './published-values.json' with { type: 'json' };
import { format, formatFigure, fromDecimal, fromTyped, toDecimal } from './text.ts';

function of(code: string) {
  return granted(currency(code));
}
const euro = of('EUR');
const anyCurrency = fc.constantFrom(...currencies());
/** What PostgreSQL's bigint holds, the books' own limit. */
const kept = fc.bigInt({ min: -(2n ** 63n) + 1n, max: 2n ** 63n - 1n });

describe('an amount is kept as text with the decimals of its currency', () => {
  it.each(published.text.values)('$minor of $currency is $decimal', ({ currency: code, minor, decimal }) => {
    expect(toDecimal(BigInt(minor), of(code))).toBe(decimal);
  });

  it.each([
    [5n, 'EUR', '0.05'],
    [-5n, 'EUR', '-0.05'],
    [0n, 'EUR', '0.00'],
    [0n, 'JPY', '0'],
    [-1n, 'KWD', '-0.001'],
    [9_223_372_036_854_775_807n, 'EUR', '92233720368547758.07'],
  ])('%d of %s is %s', (minor, code, decimal) => {
    expect(toDecimal(minor, of(code))).toBe(decimal);
  });

  it('and read back as it was', () => {
    fc.assert(
      fc.property(kept, anyCurrency, (amount, in_) => {
        expect(fromDecimal(toDecimal(amount, in_), in_)).toBe(amount);
      }),
    );
  });

  it('and says what dinero.js says', () => {
    const decimal = fc.constantFrom(...Object.values(table).filter(({ base }) => base === 10n));
    fc.assert(
      fc.property(kept, decimal, (amount, in_) => {
        expect(toDecimal(amount, of(in_.code))).toBe(toDecimalDinero(dinero({ amount, currency: in_ })));
      }),
    );
  });
});

describe('what is no amount is refused', () => {
  it.each(['', 'forty-five', '45,00', '4 5', '1e3', '--5', '.5', '5.', '٤٥', 'NaN', '0x10'])(
    '“%s”',
    (text) => {
      expect(fromDecimal(text, euro)).toMatchObject({ code: 'money/not-an-amount', facts: { text } });
    },
  );

  it.each([
    ['45.005', 'EUR', 2, 'EUR has 2 decimals. Round it to the nearest cent first.'],
    ['45.0', 'JPY', 0, 'JPY has no decimals. Round it to the nearest whole unit first.'],
    ['1.2345', 'KWD', 3, 'KWD has 3 decimals. Round it to 3 decimals first.'],
  ])('“%s” has more decimals than %s', (text, code, digits, mend) => {
    const answer = fromDecimal(text, of(code));
    expect(answer).toMatchObject({
      code: 'money/too-many-decimals',
      facts: { text, currency: code, digits },
    });
    expect(refused(answer) && answer.sentence).toContain(mend);
  });

  it('and so is more than the books can hold, by one cent', () => {
    expect(fromDecimal('92233720368547758.07', euro)).toBe(9_223_372_036_854_775_807n);
    expect(fromDecimal('92233720368547758.08', euro)).toMatchObject({ code: 'money/too-large' });
  });
});

describe('an amount may be typed as people write it', () => {
  it.each([
    ['45', 'en-GB', 4500n],
    ['45.00', 'en-GB', 4500n],
    ['45,00', 'en-GB', 4500n],
    ['45', 'de-DE', 4500n],
    ['45.00', 'de-DE', 4500n],
    ['45,00', 'de-DE', 4500n],
    ['1,234.50', 'en-GB', 123450n],
    ['1.234,50', 'de-DE', 123450n],
    ['1.234,50', 'en-GB', 123450n],
    ['1,234.50', 'de-DE', 123450n],
    ['1.234,50', 'fr-FR', 123450n],
    ['1 234,5', 'fr-FR', 123450n],
    ['1 234,5', 'en-GB', 123450n],
    ['1\u202f234,50', 'fr-FR', 123450n],
    ['1’234.50', 'de-CH', 123450n],
    ["1'234.50", 'de-CH', 123450n],
    ['1,234', 'en-GB', 123400n],
    ['1.234', 'de-DE', 123400n],
    ['1.234.567', 'de-DE', 123456700n],
    ['1,234,567.8', 'en-GB', 123456780n],
    ['1,00,000', 'en-IN', 10000000n],
    [' 12.5 ', 'en-GB', 1250n],
    ['.50', 'en-GB', 50n],
    ['45.', 'en-GB', 4500n],
    ['-3,50', 'de-DE', -350n],
    ['\u22123.50', 'en-GB', -350n],
  ])('“%s” in %s', (text, locale, minor) => {
    expect(fromTyped(text, euro, locale)).toBe(minor);
  });

  it.each([
    // one mark before three figures: thousands where the locale groups by it, decimals elsewhere
    ['1.234', 'en-GB', 'money/too-many-decimals'],
    ['1,234', 'de-DE', 'money/too-many-decimals'],
    ['1,234', 'de-CH', 'money/too-many-decimals'],
    ['12 34,5', 'fr-FR', 'money/not-an-amount'],
    ['1,23,45', 'en-GB', 'money/not-an-amount'],
    ['1,234.567.89', 'en-GB', 'money/not-an-amount'],
    ['12,345,67', 'en-GB', 'money/not-an-amount'],
    ['', 'en-GB', 'money/not-an-amount'],
    ['-', 'en-GB', 'money/not-an-amount'],
    [',', 'de-DE', 'money/not-an-amount'],
    ['45 euro', 'en-GB', 'money/not-an-amount'],
    ['4.5.6', 'en-GB', 'money/not-an-amount'],
  ])('“%s” in %s is refused as it was typed: %s', (text, locale, code) => {
    expect(fromTyped(text, euro, locale)).toMatchObject({ code, facts: { text } });
  });

  it.each(['en-GB', 'de-DE', 'fr-FR', 'de-CH'])('in %s, whatever is shown can be typed back', (locale) => {
    fc.assert(
      fc.property(kept, anyCurrency, (amount, in_) => {
        expect(fromTyped(formatFigure(money(amount, in_), locale), in_, locale)).toBe(amount);
        expect(fromTyped(toDecimal(amount, in_), in_, 'en-GB')).toBe(amount);
      }),
    );
  });
});

describe('money is shown as its reader writes it', () => {
  it.each([
    [123450n, 'GBP', 'en-GB', '£1,234.50'],
    [-123450n, 'GBP', 'en-GB', '\u2212£1,234.50'],
    [123450n, 'EUR', 'de-DE', '1.234,50\u00a0€'],
    [123450n, 'EUR', 'fr-FR', '1\u202f234,50\u00a0€'],
    [123450n, 'USD', 'en-US', '$1,234.50'],
    [12345n, 'JPY', 'en-US', '¥12,345'],
    [12345n, 'KWD', 'en-GB', 'KWD\u00a012.345'],
    [9_007_199_254_740_993n, 'EUR', 'en-IE', '€90,071,992,547,409.93'],
  ])('%d of %s in %s is %s', (amount, code, locale, shown) => {
    expect(format(money(amount, of(code)), locale)).toBe(shown);
  });

  it.each([
    [-5n, 'EUR', 'en-GB', '\u22120.05'],
    [0n, 'JPY', 'de-DE', '0'],
  ])('and %d of %s in a column in %s is %s', (amount, code, locale, shown) => {
    expect(formatFigure(money(amount, of(code)), locale)).toBe(shown);
  });

  // 0.66 of an hour for a lesson, as handbooks write load.
  it.each([
    [66n, 'en-GB', '0.66 hr'],
    [366n, 'de-DE', '3,66 Std.'],
  ])('and %d of load in %s is %s', (amount, locale, shown) => {
    expect(format(money(amount, LOAD), locale).replace(/\s/g, ' ').replace('hrs', 'hr')).toBe(shown);
  });

  it('in Switzerland with the apostrophe of the runtime, curved or straight', () => {
    expect(formatFigure(money(123450n, euro), 'de-CH')).toMatch(/^1[’']234\.50$/);
  });

  it('with as many decimals as its currency has', () => {
    fc.assert(
      fc.property(kept, anyCurrency, (amount, in_) => {
        const [, fraction = ''] = formatFigure(money(amount, in_), 'en-GB').split('.');
        expect(fraction).toHaveLength(minorDigits(in_));
      }),
    );
  });
});
