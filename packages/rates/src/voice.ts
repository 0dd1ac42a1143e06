// How figures are said in sentences and arithmetic. Words are English; marks follow the reader's locale.

import { dayNumber } from '@colla/calendar';
import { type Currency, toDecimal } from '@colla/money';

/** Says amounts, times and lists for one reader and one currency. */
export interface Voice {
  readonly locale: string;
  /** `6000n` is `60.00`. */
  readonly money: (amount: bigint) => string;
  /** Minutes as hours where they are whole quarters: 75 is `1.25 h`, 50 is `50 min`. */
  readonly minutes: (minutes: number) => string;
  /** How long: `half an hour`, `one hour`, `2 hours`, `50 minutes`. */
  readonly length: (minutes: number) => string;
  /** A price for so much time: `60.00 an hour`, `20.00 a half hour`, `45.00 for each 45 minutes`. */
  readonly rate: (price: bigint, minutes: number) => string;
  /** In which steps time is charged: `in quarter hours`, `in steps of 20 minutes`, `to the minute`. */
  readonly steps: (minutes: number) => string;
  /** Basis points: 2 500 is `25 %`, whose space does not break. */
  readonly share: (basisPoints: number) => string;
  /** A day such as `2026-03-14`: “14 March 2026”. */
  readonly day: (day: string) => string;
  /** A plain number such as a quantity, with its decimals. */
  readonly number: (text: string) => string;
  readonly list: (items: readonly string[]) => string;
  readonly either: (items: readonly string[]) => string;
}

const voices = new Map<string, Voice>();

/** The voice for a locale and currency. */
export function voice(locale: string, currency: Currency): Voice {
  const key = `${locale} ${currency}`;
  const known = voices.get(key);
  if (known) return known;
  const made = makeVoice(locale, currency);
  voices.set(key, made);
  return made;
}

function makeVoice(locale: string, currency: Currency): Voice {
  const number = numberSayer(locale);
  const money = (amount: bigint) => number(toDecimal(amount, currency));
  return {
    locale,
    number,
    money,
    minutes: (minutes) => (minutes % 15 === 0 ? `${number(String(minutes / 60))} h` : `${minutes} min`),
    length: (minutes) => lengthWords(minutes, number),
    rate: (price, minutes) =>
      `${money(price)} ${UNIT_ARTICLES[minutes] ?? 'for each'} ${UNITS[minutes] ?? lengthWords(minutes, number)}`,
    steps: stepWords,
    share: (basisPoints) => `${number(String(Number((basisPoints / 100).toFixed(4))))}\u00a0%`,
    day: daySayer(locale),
    list: (items) => join(items, 'and'),
    either: (items) => join(items, 'or'),
  };
}

/** Days in English words, in the order of the reader's kind of English; each is said once. */
function daySayer(locale: string): (day: string) => string {
  const english = locale.startsWith('en') ? locale : 'en-GB';
  const format = new Intl.DateTimeFormat(english, { dateStyle: 'long', timeZone: 'UTC' });
  const said = new Map<string, string>();
  return (day) => {
    const known = said.get(day) ?? format.format(dayNumber(day) * 86_400_000);
    said.set(day, known);
    return known;
  };
}

/** Groups figures and places the decimal mark as the locale does, in figures 0 to 9; minus is U+2212. */
function numberSayer(locale: string): (text: string) => string {
  const whole = new Intl.NumberFormat(locale, { numberingSystem: 'latn', maximumFractionDigits: 0 });
  const parts = new Intl.NumberFormat(locale, { numberingSystem: 'latn' }).formatToParts(1.5);
  const mark = parts.find((part) => part.type === 'decimal')?.value ?? '.';
  return (text) => {
    const sign = text.startsWith('-') ? '\u2212' : '';
    const from = sign.length;
    const dot = text.indexOf('.');
    const until = dot < 0 ? text.length : dot;
    const figures = text.slice(from, until);
    const grouped = until - from > 3 ? whole.format(BigInt(figures)) : figures;
    return sign + grouped + (dot < 0 ? '' : mark + text.slice(dot + 1));
  };
}

/** What one unit of time is called: `hour`, `half hour`, `45 minutes`. */
export function unitOf(minutes: number): string {
  return UNITS[minutes] ?? `${minutes} minutes`;
}

const UNITS: Readonly<Record<number, string>> = { 15: 'quarter hour', 30: 'half hour', 60: 'hour' };
const UNIT_ARTICLES: Readonly<Record<number, string>> = { 15: 'a', 30: 'a', 60: 'an' };

function lengthWords(minutes: number, number: (text: string) => string): string {
  if (minutes === 15) return 'a quarter of an hour';
  if (minutes === 30) return 'half an hour';
  if (minutes === 60) return 'one hour';
  if (minutes > 60 && minutes % 30 === 0) return `${number(String(minutes / 60))} hours`;
  return minutes === 1 ? 'one minute' : `${minutes} minutes`;
}

function stepWords(minutes: number): string {
  if (minutes === 1) return 'to the minute';
  const unit = UNITS[minutes];
  return unit ? `in ${unit}s` : `in steps of ${minutes} minutes`;
}

function join(items: readonly string[], word: string): string {
  if (items.length < 2) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} ${word} ${items[items.length - 1]}`;
}
