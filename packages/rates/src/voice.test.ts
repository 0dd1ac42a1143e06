// How figures are said: marks follow the reader's locale, decimals the currency.

import { type Currency, currency } from '@colla/money';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { voice } from './voice.ts';

const of = (locale: string, code: string) => voice(locale, granted(currency(code)) as Currency);
const english = of('en-GB', 'GBP');

describe('an amount is said', () => {
  it.each([
    ['6000n with two decimals in pounds', 'en-GB', 'GBP', 6000n, '60.00'],
    ['with grouped thousands', 'en-GB', 'GBP', 123456789n, '1,234,567.89'],
    ['as a German writes it', 'de-DE', 'EUR', 123456n, '1.234,56'],
    ['in lakhs as India groups them', 'en-IN', 'INR', 123456789n, '12,34,567.89'],
    ['with four figures together as Spanish writes them', 'es-ES', 'EUR', 123456n, '1234,56'],
    ['and five grouped', 'es-ES', 'EUR', 1234567n, '12.345,67'],
    ['in figures that every reader of the paper knows', 'ar-EG', 'EGP', 1234n, '12.34'],
    ['without decimals in yen', 'en-GB', 'JPY', 20000n, '20,000'],
    ['with three in Kuwaiti dinars', 'en-GB', 'KWD', 12345n, '12.345'],
    ['with a true minus where it is taken off', 'en-GB', 'GBP', -1000n, '\u221210.00'],
    ['as nothing', 'en-GB', 'GBP', 0n, '0.00'],
  ])('%s', (_, locale, code, amount, said) => {
    expect(of(locale, code).money(amount)).toBe(said);
  });
});

describe('time is said', () => {
  it.each([
    [15, 'a quarter of an hour'],
    [30, 'half an hour'],
    [45, '45 minutes'],
    [60, 'one hour'],
    [75, '75 minutes'],
    [90, '1.5 hours'],
    [7560, '126 hours'],
    [1, 'one minute'],
  ])('%i minutes as %s', (minutes, said) => {
    expect(english.length(minutes)).toBe(said);
  });

  it.each([
    [60, '60.00 an hour'],
    [30, '60.00 a half hour'],
    [45, '60.00 for each 45 minutes'],
    [120, '60.00 for each 2 hours'],
  ])('and its price for each %i minutes as %s', (minutes, said) => {
    expect(english.rate(6000n, minutes)).toBe(said);
  });

  it.each([
    [1, 'to the minute'],
    [15, 'in quarter hours'],
    [60, 'in hours'],
    [20, 'in steps of 20 minutes'],
  ])('and steps of %i minutes as %s', (minutes, said) => {
    expect(english.steps(minutes)).toBe(said);
  });

  it('in hours where it is whole quarters, in minutes where it is not', () => {
    expect([75, 50].map(english.minutes)).toEqual(['1.25 h', '50 min']);
  });
});

describe('shares and lists are said', () => {
  it.each([
    [2500, '25\u00a0%'],
    [981, '9.81\u00a0%'],
    [750, '7.5\u00a0%'],
    [15000, '150\u00a0%'],
  ])('%i basis points as %s', (basisPoints, said) => {
    expect(english.share(basisPoints)).toBe(said);
  });

  it('with the decimal mark of the reader', () => {
    expect(of('de-DE', 'EUR').share(981)).toBe('9,81\u00a0%');
  });

  it('with “and” or “or” before the last', () => {
    expect([english.list(['a', 'b', 'c']), english.either(['a', 'b']), english.list(['a'])]).toEqual([
      'a, b and c',
      'a or b',
      'a',
    ]);
  });
});
