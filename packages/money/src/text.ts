// Money as people type and read it.

import { type OrRefusal, Refusal } from '@colla/refusal';
import { type Currency, LOAD, minorDigits } from './currency.ts';
import type { Money } from './money.ts';

/** The largest amount the books keep, in minor units: PostgreSQL's bigint. */
export const LARGEST = 9_223_372_036_854_775_807n;

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
  if (!match) return notAnAmount(text);
  const [, sign = '', whole = '', fraction = ''] = match;
  return minorUnits({ text, sign, whole, fraction }, currency);
}

/** Figures taken apart, and the text they were read from. */
interface Figures {
  readonly text: string;
  readonly sign: string;
  readonly whole: string;
  readonly fraction: string;
}

function minorUnits({ text, sign, whole, fraction }: Figures, currency: Currency): OrRefusal<bigint> {
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

function notAnAmount(text: string): Refusal {
  return new Refusal(
    'money/not-an-amount',
    `“${text}” is not an amount. Write figures, such as 45 or 45.00.`,
    { text },
  );
}

function tooManyDecimals(text: string, currency: Currency, digits: number): Refusal {
  const has = digits === 0 ? 'no decimals' : `${digits} decimals`;
  const nearest = { 0: 'the nearest whole unit', 2: 'the nearest cent' }[digits] ?? `${digits} decimals`;
  return new Refusal(
    'money/too-many-decimals',
    `“${text}” has more decimals than ${currency} has: ${currency} has ${has}. Round it to ${nearest} first.`,
    { text, currency, digits },
  );
}

/**
 * Reads an amount as people type it in `locale`: `1,234.50` or `1.234,50` or `1 234,5`. The last of `.` and
 * `,` is the decimal mark unless it groups thousands in that locale (`1.234` is 1234 in German, 1.234 in English).
 * Refuses what `fromDecimal` refuses, and figures grouped as nobody groups them.
 */
export function fromTyped(text: string, currency: Currency, locale: string): OrRefusal<bigint> {
  const [, sign = '', typed = ''] = /^([-\u2212]?)(.*)$/.exec(text.trim()) ?? [];
  const mark = decimalMark(typed, locale);
  const at = mark === undefined ? typed.length : typed.lastIndexOf(mark);
  const whole = typed.slice(0, at);
  const fraction = typed.slice(at + 1);
  if (!/\d/.test(typed) || !GROUPED.test(whole) || !/^\d*$/.test(fraction)) return notAnAmount(text);
  return minorUnits({ text, sign, whole: whole.replace(/\D/g, '') || '0', fraction }, currency);
}

/** Digits alone, or in groups that one mark parts: threes, and the twos of Indian lakhs. */
const GROUPED = /^(\d*|\d{1,3}([.,\s’'])(\d{2,3}\2)*\d{3})$/;

/** The mark that begins the decimals, where one does. */
function decimalMark(typed: string, locale: string): string | undefined {
  const marks: string[] = typed.match(/[.,]/g) ?? [];
  const last = marks.at(-1);
  if (marks.some((mark) => mark !== last)) return last;
  const groups = marks.length > 1 || (last === groupMark(locale) && /^\d{1,3}[.,]\d{3}$/.test(typed));
  return groups ? undefined : last;
}

/** Money for a reader of `locale`, with its currency: `£1,234.50`, `1.234,50 €`; load in hours. Minus is U+2212. */
export function format({ amount, currency }: Money, locale: string): string {
  return say(formatter(locale, currency, currency === LOAD ? 'unit' : 'currency'), amount, currency);
}

/** The bare figure for a column whose currency is said elsewhere: `1,234.50`. Minus is U+2212. */
export function formatFigure({ amount, currency }: Money, locale: string): string {
  return say(formatter(locale, currency, 'decimal'), amount, currency);
}

function say(of: Intl.NumberFormat, amount: bigint, currency: Currency): string {
  return of.format(toDecimal(amount, currency) as Intl.StringNumericLiteral).replace('-', '\u2212');
}

const formatters = new Map<string, Intl.NumberFormat>();

function formatter(
  locale: string,
  currency: Currency,
  style: 'currency' | 'decimal' | 'unit',
): Intl.NumberFormat {
  const key = `${locale} ${currency} ${style}`;
  const known = formatters.get(key);
  if (known) return known;
  const digits = minorDigits(currency);
  const made = new Intl.NumberFormat(locale, {
    style,
    ...(style === 'currency' ? { currency } : {}),
    ...(style === 'unit' ? { unit: 'hour' } : {}),
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  });
  formatters.set(key, made);
  return made;
}

/** What parts thousands in a locale; nothing where it has no such mark. */
function groupMark(locale: string): string | undefined {
  const parts = new Intl.NumberFormat(locale).formatToParts(1234567.5);
  return parts.find((part) => part.type === 'group')?.value;
}
