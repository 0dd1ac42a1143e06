import { refused } from '@colla/refusal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ExchangeRate, eachInBook, exchangeRate, inBook } from './exchange-rate.ts';
import { DINAR, day, EURO, POUND, YEN } from './told.fixture.ts';

const euro: ExchangeRate = { from: EURO, to: POUND, rate: '0.8567', on: day('02-10'), source: 'the bank' };

describe('an amount in the book', () => {
  it.each([
    // 120.00 × 0.8567 = 102.804; 0.05 × 0.5 = 0.025, a tie, away from zero
    [12000n, euro, 10280n],
    [-12000n, euro, -10280n],
    [5n, { ...euro, rate: '0.5' }, 3n],
    [-5n, { ...euro, rate: '0.5' }, -3n],
    // 15,000 yen have no decimals: × 0.0052 = 78.00 pounds
    [15000n, { ...euro, from: YEN, rate: '0.0052' }, 7800n],
    // 100.00 euro × 162.35 = 16,235 yen
    [10000n, { ...euro, to: YEN, rate: '162.35' }, 16235n],
    // 12.345 dinar × 2.4501 = 30.2464845 pounds
    [12345n, { ...euro, from: DINAR, rate: '2.4501' }, 3025n],
  ])('%d at a rate is %#', (amount, rate, book) => {
    expect(inBook(amount, rate)).toBe(book);
  });

  it('of several amounts is what their sum comes to', () => {
    // three times 0.33 × 0.5 = 0.165; together 0.495, which is 0.50
    expect(eachInBook([33n, 33n, 33n], { ...euro, rate: '0.5' })).toEqual([17n, 16n, 17n]);
  });

  it('of several amounts never turns one round, nor moves it by a whole unit', () => {
    const amounts = fc.array(fc.bigInt({ min: -(10n ** 12n), max: 10n ** 12n }), { maxLength: 12 });
    fc.assert(
      fc.property(amounts, fc.integer({ min: 1, max: 9_999_999 }), (all, figures) => {
        const rate = { ...euro, rate: `0.${String(figures).padStart(7, '0')}` };
        const parts = eachInBook(all, rate);
        const whole = all.reduce((so, amount) => so + amount, 0n);
        expect(parts.reduce((so, part) => so + part, 0n)).toBe(inBook(whole, rate));
        for (const [index, part] of parts.entries()) {
          const amount = all[index] ?? 0n;
          expect(amount >= 0n ? part >= 0n : part <= 0n).toBe(true);
          const off = part - inBook(amount, rate);
          expect(off >= -1n && off <= 1n).toBe(true);
        }
      }),
    );
  });
});

describe('an exchange rate', () => {
  it('is kept as it was entered, with its day and source', () => {
    expect(exchangeRate(euro)).toEqual(euro);
  });

  it.each([
    [{ rate: '0' }, 'ledger/not-a-rate', '/rate'],
    [{ rate: '0.000' }, 'ledger/not-a-rate', '/rate'],
    [{ rate: '-0.8' }, 'ledger/not-a-rate', '/rate'],
    [{ rate: '0,8567' }, 'ledger/not-a-rate', '/rate'],
    [{ rate: '1e3' }, 'ledger/not-a-rate', '/rate'],
    [{ rate: '0.123456789012' }, 'ledger/not-a-rate', '/rate'],
    [{ source: ' ' }, 'ledger/rate-without-source', '/source'],
    [{ from: POUND }, 'ledger/rate-to-itself', '/from'],
  ])('%j is refused as %s', (but, code, field) => {
    expect(exchangeRate({ ...euro, ...but })).toMatchObject({ code, field });
  });

  it('is asked for by example', () => {
    const answer = exchangeRate({ ...euro, rate: '0,8567' });
    expect(refused(answer) && answer.sentence).toBe(
      '“0,8567” is not an exchange rate. Write what 1 EUR is in GBP with a decimal point and at most 12 figures, such as 0.8567.',
    );
  });
});
