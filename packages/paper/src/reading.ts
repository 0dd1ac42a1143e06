// An invoice before its reader: the words it is written with, and the way figures and days are said.

import type { Temporal } from '@colla/calendar';
import type { Invoice, InvoiceStanding } from '@colla/invoicing';
import type { Paper } from './page.ts';
import type { Say } from './say.ts';
import type { Words } from './words.ts';

/** What was paid on an invoice so far, and what is owed. Minor units. */
export type Paid = Pick<InvoiceStanding, 'paid' | 'owed'>;

/** How a reader wants an invoice: on which paper, in which locale, and with what was paid on it so far. */
export interface InvoiceReader {
  readonly paper: Paper;
  /** A BCP 47 tag. */
  readonly locale: string;
  readonly standing?: Paid;
  /** The clauses' sentences as they were agreed; with them the invoice says how it came about. */
  readonly sentences?: readonly { readonly clause: string; readonly sentence: string }[];
}

export interface Reading {
  readonly invoice: Invoice;
  readonly words: Words;
  readonly say: Say;
  /** Whether the faces hold every letter of a text. */
  readonly spells: (text: string) => boolean;
}

/** A day as the reader's locale has it, in full or for a column; by ISO 8601 where the faces lack its letters. */
export function sayDay({ say, spells }: Reading, day: Temporal.PlainDate, how: 'long' | 'short'): string {
  const said = how === 'long' ? say.day(day) : say.shortDay(day);
  return spells(said) ? said : day.toString();
}
