// Document numbers: one series a kind and year, without a gap.

import type { Temporal } from '@colla/calendar';

/** The series of invoices issued in a year. */
export function invoiceSeries(issuedOn: Temporal.PlainDate): string {
  return String(issuedOn.year);
}

/** A number as it stands on the document: `2026-0007`. */
export function writeNumber({ series, ordinal }: { series: string; ordinal: number }): string {
  return `${series}-${String(ordinal).padStart(4, '0')}`;
}

/** A file name that only has letters, digits and hyphens, whatever the number or title holds. */
export function fileName(number: string): string {
  const plain = number
    .normalize('NFKD')
    .replace(/\p{Mark}+/gu, '')
    .replace(/[^A-Za-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  return `invoice-${plain || 'document'}.pdf`;
}
