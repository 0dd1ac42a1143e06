// How figures are said in sentences and arithmetic. Words are English; marks follow the reader's locale.

import { type Currency, toDecimal } from '@colla/money';

/** Says amounts, times and lists for one reader and one currency. */
export interface Voice {
  readonly locale: string;
  /** `6000n` is `60.00`. */
  readonly money: (amount: bigint) => string;
  /** Minutes as hours where they are whole quarters: 75 is `1.25 h`, 50 is `50 min`. */
  readonly minutes: (minutes: number) => string;
  /** Minutes in words: `quarter hour`, `half hour`, `hour`, `2 hours`, `50 minutes`. */
  readonly duration: (minutes: number) => string;
  /** Basis points: 2 500 is `25 %`. */
  readonly share: (basisPoints: number) => string;
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
  return {
    locale,
    number,
    money: (amount) => number(toDecimal(amount, currency)),
    minutes: (minutes) => (minutes % 15 === 0 ? `${number(String(minutes / 60))} h` : `${minutes} min`),
    duration: (minutes) => durationWords(minutes, number),
    share: (basisPoints) => `${number(String(basisPoints / 100))} %`,
    list: (items) => join(items, 'and'),
    either: (items) => join(items, 'or'),
  };
}

/** Groups thousands and places the decimal mark as the locale does; minus is U+2212. */
function numberSayer(locale: string): (text: string) => string {
  const parts = new Intl.NumberFormat(locale).formatToParts(1234567.5);
  const group = parts.find((part) => part.type === 'group')?.value ?? ',';
  const mark = parts.find((part) => part.type === 'decimal')?.value ?? '.';
  return (text) => {
    const sign = text.startsWith('-') ? '\u2212' : '';
    const [whole = '', fraction] = text.replace('-', '').split('.');
    const grouped = whole.length > 3 ? whole.replace(/\B(?=(\d{3})+$)/g, group) : whole;
    return sign + grouped + (fraction === undefined ? '' : mark + fraction);
  };
}

function durationWords(minutes: number, number: (text: string) => string): string {
  if (minutes === 15) return 'quarter hour';
  if (minutes === 30) return 'half hour';
  if (minutes === 60) return 'hour';
  if (minutes % 15 === 0) return `${number(String(minutes / 60))} hours`;
  return minutes === 1 ? 'minute' : `${minutes} minutes`;
}

function join(items: readonly string[], word: string): string {
  if (items.length < 2) return items[0] ?? '';
  return `${items.slice(0, -1).join(', ')} ${word} ${items[items.length - 1]}`;
}
