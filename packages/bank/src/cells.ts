// Days and sums as banks write them into the cells of a row.

import { readDay, type Temporal } from '@colla/calendar';
import { refused } from '@colla/refusal';

export const DATE_ORDERS = ['day month year', 'month day year', 'year month day'] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

export const DECIMAL_MARKS = ['.', ','] as const;
export type DecimalMark = (typeof DECIMAL_MARKS)[number];

/**
 * The day in a cell such as `25.11.2026`, `11/25/26`, `2026-11-25T09:30`, `20261125` or `25 Nov 2026`; a year of two
 * figures is of this century. Nothing where there is no such day in that order.
 */
export function dayIn(cell: string, order: DateOrder): Temporal.PlainDate | undefined {
  const [, y, m, d] = /^(\d{4})(\d\d)(\d\d)$/.exec(cell) ?? [];
  const written = y && m && d ? [y, m, d] : partsOf(cell);
  const [first = '', second = '', third = ''] = written ?? [];
  const placed = {
    'day month year': [third, second, first],
    'month day year': [third, first, second],
    'year month day': [first, second, third],
  }[order];
  const [year = '', month = '', day = ''] = placed;
  if (!/^(\d\d|\d{4})$/.test(year)) return undefined;
  const read = readDay(`${year.padStart(4, '20')}-${monthOf(month)}-${day.padStart(2, '0')}`);
  return refused(read) ? undefined : read;
}

/** The three parts of a date, whatever stands between them and whatever time of day follows. */
function partsOf(cell: string): string[] | undefined {
  const [date = ''] = cell.split(/[T ](?=\d\d?:\d\d)/);
  const parts = date.split(/[\s./,-]+/).filter((part) => part !== '');
  return parts.length === 3 ? parts : undefined;
}

/** A month by its figures or the first letters of its name: English, German or French. */
function monthOf(written: string): string {
  const name = plain(written);
  const place = MONTHS.findIndex((names) => names.some((begins) => name.startsWith(begins)));
  return place < 0 ? written.padStart(2, '0') : String(place + 1).padStart(2, '0');
}

const MONTHS = [
  ['jan'],
  ['feb', 'fev'],
  ['mar', 'mrz', 'maerz'],
  ['apr', 'avr'],
  ['may', 'mai'],
  ['jun', 'juin'],
  ['jul', 'juil'],
  ['aug', 'aou'],
  ['sep'],
  ['oct', 'okt'],
  ['nov'],
  ['dec', 'dez'],
];

/** In small letters without marks, words parted by one space: `Währung (EUR)` is `wahrung eur`. */
export function plain(text: string): string {
  return text
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .replaceAll('ß', 'ss')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, ' ')
    .trim();
}

/** A sum as a cell says it. */
export interface WrittenSum {
  /** With a point and a minus, as `-1234.5`. */
  readonly decimal: string;
  /** The currency that stands beside it, where one does. */
  readonly code?: string;
}

/**
 * The sum in a cell such as `-1.234,50`, `1'234.50 CHF`, `€ 12`, `12.50-` or `(12.50)`. Thousands are parted by any
 * mark but the decimal one. Nothing where the cell is no sum written so.
 */
export function sumIn(cell: string, mark: DecimalMark): WrittenSum | undefined {
  const [, before = '', figures = '', after = ''] =
    /^([^\d.,]*)([\d.,'’\s]*?)([^\d.,]*)$/.exec(cell.trim()) ?? [];
  const { whole = '', fraction = '' } = FIGURES[mark].exec(figures.trim())?.groups ?? {};
  const around = `${before} ${after}`;
  const [code] = /[A-Z]{3}/.exec(around.replace('€', 'EUR').replace('£', 'GBP')) ?? [];
  const signs = around.replace(/[A-Z]{3}|\p{Currency_Symbol}|\s/gu, '').replace('\u2212', '-');
  if (whole + fraction === '' || !['', '+', '-', '()'].includes(signs)) return undefined;
  const sign = signs === '-' || signs === '()' ? '-' : '';
  const decimal = `${sign}${whole.replace(/\D/g, '') || '0'}${fraction && `.${fraction}`}`;
  return { decimal, ...(code && { code }) };
}

/** Figures, their thousands parted by one mark or none, and those after the decimal mark. */
const FIGURES: Record<DecimalMark, RegExp> = {
  '.': /^(?<whole>\d*|\d{1,3}(?:(?<parted>[,'’\s])\d{3})(?:\k<parted>\d{3})*)(?:\.(?<fraction>\d*))?$/,
  ',': /^(?<whole>\d*|\d{1,3}(?:(?<parted>[.'’\s])\d{3})(?:\k<parted>\d{3})*)(?:,(?<fraction>\d*))?$/,
};
