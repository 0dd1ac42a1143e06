// What one unit of a foreign currency came to in the book's, with the day and who said so.

import type { Temporal } from '@colla/calendar';
import { type Currency, divideRounded, minorDigits } from '@colla/money';
import { type OrRefusal, Refusal } from '@colla/refusal';

/** One unit of `from` is `rate` units of `to`; `rate` is decimal text, kept as it was entered. */
export interface ExchangeRate {
  readonly from: Currency;
  readonly to: Currency;
  readonly rate: string;
  readonly on: Temporal.PlainDate;
  readonly source: string;
}

/** More figures than any bank publishes: a rate carries six significant ones (Regulation (EC) 1103/97, from memory). */
const MOST_FIGURES = 12;

/**
 * A rate as entered. Refuses what is no positive decimal, a rate between a currency and itself, and one without a
 * source: nobody could check it.
 */
export function exchangeRate(of: ExchangeRate): OrRefusal<ExchangeRate> {
  if (!/^\d+(\.\d+)?$/.test(of.rate) || !/[1-9]/.test(of.rate) || of.rate.length > MOST_FIGURES + 1)
    return noRate(of);
  if (of.source.trim() === '') {
    return new Refusal(
      'ledger/rate-without-source',
      'Say where the exchange rate comes from, such as the bank or the authority that published it.',
      {},
      '/source',
    );
  }
  if (of.from !== of.to) return of;
  return new Refusal(
    'ledger/rate-to-itself',
    `The books are kept in ${of.to}, so ${of.from} needs no exchange rate. Leave it out.`,
    { currency: of.from },
    '/from',
  );
}

function noRate({ from, to, rate }: ExchangeRate): Refusal {
  return new Refusal(
    'ledger/not-a-rate',
    `“${rate}” is not an exchange rate. Write what 1 ${from} is in ${to} with a decimal point and at most ${MOST_FIGURES} figures, such as 0.8567.`,
    { rate },
    '/rate',
  );
}

/**
 * An amount in the book's currency, rounded once to its minor unit, ties away from zero: 120.00 EUR at 0.8567 are
 * 102.80 GBP. Both currencies have their own minor units.
 */
export function inBook(amount: bigint, { from, to, rate }: ExchangeRate): bigint {
  const [whole = '', fraction = ''] = rate.split('.');
  const up = 10n ** BigInt(minorDigits(to));
  const down = 10n ** BigInt(minorDigits(from) + fraction.length);
  return divideRounded(amount * BigInt(whole + fraction) * up, down);
}

/**
 * Several amounts in the book's currency so that they come to what their sum comes to: each is the difference of two
 * running totals, and so less than one minor unit from its own figure.
 */
export function eachInBook(amounts: readonly bigint[], rate: ExchangeRate): bigint[] {
  let so = 0n;
  return amounts.map((amount) => {
    const before = inBook(so, rate);
    so += amount;
    return inBook(so, rate) - before;
  });
}
