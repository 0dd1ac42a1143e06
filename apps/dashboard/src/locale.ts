// Days, times, numbers and money as a reader of the organisation's locale expects them.

import { dayNumber } from '@colla/calendar';
import {
  type Currency,
  format,
  formatFigure,
  fromDecimal,
  fromTyped,
  measure,
  toDecimal,
} from '@colla/money';
import { granted, type OrRefusal, refused } from '@colla/refusal';
import { clockOf, dayOf } from './local-time.ts';

let locale = 'en';
let formats = new Map<string, Intl.DateTimeFormat | Intl.NumberFormat>();

/** Every text from here on is for readers of this locale; the shell says which as soon as it knows. */
export function speakIn(next: string): void {
  locale = next;
  formats = new Map();
}

export function spokenLocale(): string {
  return locale;
}

export type DayStyle = 'short' | 'long' | 'month' | 'monthShort' | 'monthYear' | 'weekday';

const DAY_STYLES: Record<DayStyle, Intl.DateTimeFormatOptions> = {
  short: { day: 'numeric', month: 'short', year: 'numeric' },
  long: { weekday: 'long', day: 'numeric', month: 'long', year: 'numeric' },
  month: { month: 'long' },
  monthShort: { month: 'short' },
  monthYear: { month: 'long', year: 'numeric' },
  weekday: { weekday: 'short', day: 'numeric', month: 'short' },
};

/** A day, from `2026-03-14` or from an instant, by the place's own calendar. */
export function sayDay(text: string, style: DayStyle = 'short'): string {
  const made = () => new Intl.DateTimeFormat(locale, { ...DAY_STYLES[style], timeZone: 'UTC' });
  return once(`day ${style}`, made).format(dayNumber(dayOf(text)) * 86_400_000);
}

/** A sentence with its days, `2026-03-14`, as the reader has them; what was typed, and how a day is written, stays. */
export function sayDaysIn(sentence: string): string {
  return sentence.replace(/(?<!\bas |“)\b\d{4}-\d{2}-\d{2}\b(?!T)/g, (day) => sayDay(day));
}

/** From one day to another, without saying twice what both share: `9 Nov – 15 Dec 2026`. */
export function sayDays(first: string, last: string): string {
  const made = () => new Intl.DateTimeFormat(locale, { ...DAY_STYLES.short, timeZone: 'UTC' });
  const [from = 0, to = 0] = [first, last].map((text) => dayNumber(dayOf(text)) * 86_400_000);
  return once('days', made).formatRange(from, to);
}

/** The clock of the place at an instant: `19:30`, or `7:30 pm`. */
export function sayTime(instant: string): string {
  const made = () => new Intl.DateTimeFormat(locale, { timeStyle: 'short', timeZone: 'UTC' });
  return once('time', made).format(clockOf(instant) * 60_000);
}

/** From one instant until another at the same place. */
export function saySpan({ start, end }: { start: string; end: string }): string {
  return `${sayTime(start)}–${sayTime(end)}`;
}

/** Minutes as hours with two decimals, for columns: 90 is `1.50`. */
export function sayHours(minutes: number): string {
  return sayNumber(minutes / 60, 2);
}

export function sayNumber(value: number, decimals = 0): string {
  const made = () =>
    new Intl.NumberFormat(locale, { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
  return once(`number ${decimals}`, made).format(value).replace('-', '\u2212');
}

/** An amount of the wire with its currency: `£1,234.50`. */
export function sayMoney(amount: string, code: string): string {
  return format(moneyOf(amount, code), locale);
}

/** The bare figure, for a column whose currency is said elsewhere. */
export function sayFigure(amount: string, code: string): string {
  return formatFigure(moneyOf(amount, code), locale);
}

/** What was typed, as the wire writes it (`45.00`), or why it is no amount. */
export function readTyped(typed: string, code: string): OrRefusal<string> {
  const of = measure(code);
  if (refused(of)) return of;
  const minor = fromTyped(typed, of, locale);
  return refused(minor) ? minor : toDecimal(minor, of);
}

/** Decimal text as a field shows it to be typed over: the locale's own mark, and no groups. */
export function asTyped(decimal: string, of = locale): string {
  const parts = new Intl.NumberFormat(of).formatToParts(1.5);
  return decimal.replace('.', parts.find(({ type }) => type === 'decimal')?.value ?? '.');
}

function moneyOf(amount: string, code: string): { amount: bigint; currency: Currency } {
  const of = granted(measure(code));
  return { amount: granted(fromDecimal(amount, of)), currency: of };
}

function once<F extends Intl.DateTimeFormat | Intl.NumberFormat>(key: string, make: () => F): F {
  const known = formats.get(key) ?? make();
  formats.set(key, known);
  return known as F;
}
