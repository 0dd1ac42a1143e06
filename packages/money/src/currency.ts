// ISO 4217 currencies and their minor units.

import { type OrRefusal, Refusal } from '@colla/refusal';
import * as table from 'dinero.js/bigint/currencies';

/** An ISO 4217 alphabetic code that money can be kept in. Made by `currency`. */
export type Currency = string & { readonly __brand: 'Currency' };

/**
 * The ouguiya and the ariary divide by five, which dinero.js models as base 5; ISO 4217 lists two minor
 * digits for both, and so do their banks' statements, so they are kept in hundredths here.
 */
const digitsOf = new Map<string, number>(
  Object.values(table).map((entry) => [entry.code, entry.base === 10n ? Number(entry.exponent) : 2]),
);

/** Reads a currency code; refuses one that ISO 4217 does not list with a minor unit. */
export function currency(code: string): OrRefusal<Currency> {
  if (digitsOf.has(code)) return code as Currency;
  return new Refusal(
    'money/unknown-currency',
    `“${code}” is not a currency that ISO 4217 lists. Use three capital letters, such as EUR, GBP or USD.`,
    { code },
  );
}

/**
 * Load: hours that count against an appointment, in hundredths, as handbooks write them (0.66 of an hour). A tariff may
 * count in it as in a currency; it is no money, and `currency` refuses it.
 */
export const LOAD = 'load' as Currency;

/** Reads what a tariff counts in: a currency, or `load`. */
export function measure(code: string): OrRefusal<Currency> {
  return code === LOAD ? LOAD : currency(code);
}

/** How many decimals the currency's minor unit has (ISO 4217): 2 for EUR, 0 for JPY, 3 for KWD. */
export function minorDigits(of: Currency): number {
  const digits = of === LOAD ? 2 : digitsOf.get(of);
  if (digits === undefined) throw new Error(`no such currency: ${of}`);
  return digits;
}

/** Every currency code money can be kept in, in alphabetical order. */
export function currencies(): Currency[] {
  return [...digitsOf.keys()].sort() as Currency[];
}
