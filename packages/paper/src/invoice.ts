// An invoice as a manuscript, and the manuscript as pages.

import type { Invoice, Named } from '@colla/invoicing';
import { engrave } from './engrave.ts';
import type { Faces } from './face.ts';
import { invoiceSums } from './invoice-sums.ts';
import { invoiceTable } from './invoice-table.ts';
import { invoiceWhy } from './invoice-why.ts';
import { spells } from './legible.ts';
import type { Labelled, Manuscript, Passage } from './manuscript.ts';
import type { Layout } from './page.ts';
import { type InvoiceReader, type Reading, sayDay } from './reading.ts';
import { sayFor } from './say.ts';
import { type Words, wordsFor } from './words.ts';

/** An invoice laid out for a reader. Pure: the same invoice gives the same places. */
export function invoiceLayout(invoice: Invoice, reader: InvoiceReader, faces: Faces): Layout {
  return engrave(invoiceManuscript(invoice, reader, faces), { paper: reader.paper, faces });
}

/** The words of an invoice, in order. */
function invoiceManuscript(
  invoice: Invoice,
  { locale, standing, sentences }: InvoiceReader,
  faces: Faces,
): Manuscript {
  const { words, language } = wordsFor(locale);
  const reading: Reading = { invoice, words, say: sayFor(locale), spells: (text) => spells(text, faces) };
  const { number, from, to, note } = invoice;
  return {
    title: words.invoice(number),
    language,
    madeOn: invoice.issuedOn,
    masthead: { name: from.name, whereabouts: [...from.address, ...taxNumber(from, words)].join(' · ') },
    heading: words.invoice(number),
    subject: invoice.title,
    to: { label: words.to, lines: [to.name, ...to.address, ...taxNumber(to, words)] },
    facts: facts(reading),
    table: invoiceTable(reading),
    ...invoiceSums(reading, standing),
    ...(sentences ? invoiceWhy(reading, sentences) : {}),
    imprint: imprint(reading),
    ...(note ? { note: { label: words.note, lines: note.split(/\n+/) } } : {}),
    foot: (page, pages) => words.page(number, page, pages),
  };
}

function taxNumber({ taxNumber }: Named, words: Words): string[] {
  return taxNumber ? [words.taxNumber(taxNumber)] : [];
}

function facts(reading: Reading): Labelled[] {
  const { invoice, words } = reading;
  const { issuedOn, dueOn, from, to } = invoice;
  return [
    { label: words.issued, text: sayDay(reading, issuedOn, 'long') },
    { label: words.due, text: sayDay(reading, dueOn, 'long') },
    ...(to.reference ? [{ label: words.yourReference, text: to.reference }] : []),
    ...(from.reference ? [{ label: words.ourReference, text: from.reference }] : []),
  ];
}

function imprint({ invoice: { payTo, terms, number }, words }: Reading): Passage[] {
  return [
    ...(payTo.length > 0 ? [{ label: words.howToPay, lines: [...payTo, words.quote(number)] }] : []),
    ...(terms ? [{ label: words.terms, lines: [terms] }] : []),
  ];
}
