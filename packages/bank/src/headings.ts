// What the columns of a bank's rows are headed, in English, German and French: the plain words of the trade, from memory.

import { plain } from './cells.ts';

export type Purpose = keyof typeof WORDS;

/** Whether a cell is one of the headings. */
export function isHeading(cell: string): boolean {
  return known.has(heading(cell));
}

/** The column for a purpose; of several that would do, the one whose heading says it best. */
export function columnFor(headings: readonly string[], purpose: Purpose): number | undefined {
  const columns = headings.map(heading);
  const word: string | undefined = WORDS[purpose].find((one) => columns.includes(one));
  return word === undefined ? undefined : columns.indexOf(word);
}

/** All columns for a purpose, from left to right. */
export function columnsFor(headings: readonly string[], purpose: Purpose): number[] {
  const words: readonly string[] = WORDS[purpose];
  return headings.flatMap((cell, column) => (words.includes(heading(cell)) ? [column] : []));
}

/** Without a currency or unit behind: `Betrag (EUR)` and `Betrag in EUR` are `betrag`. */
function heading(cell: string): string {
  return plain(cell.replace(/\(.*\)|(?<=\S )(in )?[A-Z]{3}$/g, ''));
}

/** In small letters without marks; what says it best first. */
const WORDS = {
  day: [
    'booking date',
    'posting date',
    'date posted',
    'transaction date',
    'date',
    'buchungstag',
    'buchungsdatum',
    'datum',
    'date de comptabilisation',
    'date comptable',
    'date d operation',
    'date de l operation',
    'date operation',
    'value date',
    'valuta',
    'wertstellung',
    'date de valeur',
  ],
  sum: ['amount', 'transaction amount', 'betrag', 'umsatz', 'montant', 'montant de l operation'],
  in: ['credit', 'credit amount', 'paid in', 'money in', 'deposits', 'haben', 'gutschrift', 'montant credit'],
  out: [
    'debit',
    'debit amount',
    'paid out',
    'money out',
    'withdrawals',
    'soll',
    'belastung',
    'lastschrift',
    'montant debit',
  ],
  side: ['credit debit', 'debit credit', 'cr dr', 'dr cr', 'soll haben', 's h', 'sens'],
  name: [
    'name',
    'payer',
    'payee',
    'counterparty',
    'other party',
    'zahlungspflichtiger',
    'auftraggeber',
    'auftraggeber empfanger',
    'nom',
    'contrepartie',
    'donneur d ordre',
    'tiers',
  ],
  words: [
    'description',
    'details',
    'payment details',
    'narrative',
    'memo',
    'particulars',
    'verwendungszweck',
    'buchungstext',
    'libelle',
    'communication',
    'motif',
    'details de l operation',
  ],
  reference: ['reference', 'payment reference', 'referenz', 'zahlungsreferenz', 'reference du paiement'],
  bankId: [
    'transaction id',
    'transaction number',
    'bank reference',
    'transaktionsnummer',
    'buchungsnummer',
    'bankreferenz',
    'numero de transaction',
    'numero d operation',
    'reference bancaire',
  ],
  currencyOf: ['currency', 'wahrung', 'devise', 'monnaie'],
} as const;

const known = new Set<string>(Object.values(WORDS).flat());
