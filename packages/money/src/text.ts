// Money as people type and read it.

import { type OrRefusal, Refusal } from '@colla/refusal';
import { type Currency, minorDigits } from './currency.ts';
import type { Money } from './money.ts';

/** The largest amount the books keep, in minor units: PostgreSQL's bigint. */
const LARGEST = 9_223_372_036_854_775_807n;

/** Canonical text of minor units: `12345n` in USD is `123.45`, in JPY `12345`, in KWD `12.345`. */
export function toDecimal(amount: bigint, currency: Currency): string {
  const digits = minorDigits(currency);
  const sign = amount < 0n ? '-' : '';
  const figures = (amount < 0n ? -amount : amount).toString().padStart(digits + 1, '0');
  if (digits === 0) return sign + figures;
  return `${sign}${figures.slice(0, -digits)}.${figures.slice(-digits)}`;
}

/**
 * Reads canonical text (`45`, `45.00`, `-3.5`) into minor units. Refuses words, and more decimals than the
 * currency has: 45.005 euro is nobody's price.
 */
export function fromDecimal(text: string, currency: Currency): OrRefusal<bigint> {
  const match = /^(-?)(\d+)(?:\.(\d+))?$/.exec(text.trim());
  if (!match) {
    return new Refusal(
      'money/not-an-amount',
      `“${text}” is not an amount. Write figures, such as 45 or 45.00.`,
      {
        text,
      },
    );
  }
  const [, sign = '', whole = '', fraction = ''] = match;
  const digits = minorDigits(currency);
  if (fraction.length > digits) return tooManyDecimals(text, currency, digits);
  const amount = BigInt(whole + fraction.padEnd(digits, '0'));
  if (amount > LARGEST) {
    return new Refusal('money/too-large', `“${text}” is more than the books can hold. Check the figure.`, {
      text,
    });
  }
  return sign ? -amount : amount;
}

function tooManyDecimals(text: string, currency: Currency, digits: number): Refusal {
  const has = digits === 0 ? 'no decimals' : `${digits} decimals`;
  return new Refusal(
    'money/too-many-decimals',
    `“${text}” has more decimals than ${currency} has: ${currency} has ${has}. Round it to the nearest ${digits === 0 ? 'whole unit' : 'cent'} first.`,
    { text, currency, digits },
  );
}

/**
 * Reads an amount as people type it in `locale`: `1,234.50` or `1.234,50` or `1 234,5`. The last of `.` and
 * `,` is the decimal mark unless it groups thousands in that locale (`1.234` is 1234 in German, 1.234 in English).
 */
export function fromTyped(text: string, currency: Currency, locale: string): OrRefusal<bigint> {
  const { group, decimal } = marksOf(locale);
  const bare = text
    .trim()
    .replace(/[\s\u00a0\u202f’']/g, '')
    .replace(/^\u2212/, '-');
  const grouped = new RegExp(`^-?\\d{1,3}(\\${group}\\d{3})+(\\${decimal}\\d+)?$`);
  if (grouped.test(bare)) return fromDecimal(bare.replaceAll(group, '').replace(decimal, '.'), currency);
  const marks = bare.match(/[.,]/g) ?? [];
  return fromDecimal(marks.length === 1 ? bare.replace(/[.,]/, '.') : bare.replace(decimal, '.'), currency);
}

/** Money for a reader of `locale`, with its currency: `£1,234.50`, `1.234,50 €`. Minus is U+2212. */
export function format({ amount, currency }: Money, locale: string): string {
  return say(formatter(locale, currency, 'currency'), amount, currency);
}

/** The bare figure for a column whose currency is said elsewhere: `1,234.50`. Minus is U+2212. */
export function formatFigure({ amount, currency }: Money, locale: string): string {
  return say(formatter(locale, currency, 'decimal'), amount, currency);
}

function say(of: Intl.NumberFormat, amount: bigint, currency: Currency): string {
  return of.format(toDecimal(amount, currency) as Intl.StringNumericLiteral).replace('-', '\u2212');
}

const formatters = new Map<string, Intl.NumberFormat>();

function formatter(locale: string, currency: Currency, style: 'currency' | 'decimal'): Intl.NumberFormat {
  const key = `${locale} ${currency} ${style}`;
  const known = formatters.get(key);
  if (known) return known;
  const digits = minorDigits(currency);
  const made = new Intl.NumberFormat(locale, {
    style,
    ...(style === 'currency' ? { currency } : {}),
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
  formatters.set(key, made);
  return made;
}

function marksOf(locale: string): { group: string; decimal: string } {
  const parts = new Intl.NumberFormat(locale).formatToParts(1234567.5);
  const of = (type: string, otherwise: string) =>
    parts.find((part) => part.type === type)?.value ?? otherwise;
  return { group: of('group', ','), decimal: of('decimal', '.') };
}
