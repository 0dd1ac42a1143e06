// Document numbers: one series a kind and year, without a gap.

import type { Temporal } from '@colla/calendar';

/** The documents that are numbered, and the letter that tells their series apart; an invoice has its year alone. */
const LETTERS = {
  invoice: '',
  'credit note': 'C',
  'deposit request': 'D',
  receipt: 'R',
  quote: 'Q',
  agreement: 'A',
  'statement of account': 'S',
  reminder: 'M',
} as const;
export type NumberedKind = keyof typeof LETTERS;

/** The series of one kind of document in one year: `2026`, `C2026`. */
export function seriesOf(kind: NumberedKind, issuedOn: Temporal.PlainDate): string {
  return `${LETTERS[kind]}${issuedOn.year}`;
}

/** The series of invoices issued in a year. */
export function invoiceSeries(issuedOn: Temporal.PlainDate): string {
  return seriesOf('invoice', issuedOn);
}

/** A number as it stands on the document: `2026-0007`. */
export function writeNumber({ series, ordinal }: { series: string; ordinal: number }): string {
  return `${series}-${String(ordinal).padStart(4, '0')}`;
}

/** A file name that only has letters, digits and hyphens, whatever the number or title holds. */
export function fileName(number: string, kind: NumberedKind = 'invoice'): string {
  const plain = number
    .normalize('NFKD')
    .replace(/\p{Mark}+/gu, '')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return `${kind.replaceAll(' ', '-')}-${plain || 'document'}.pdf`;
}
