// Documents are printed once, when they are issued, and kept as they are.

import type { Temporal } from '@colla/calendar';
import { type Agreement, type Engagement, hasAgreement, type Organisation } from '@colla/engagements';
import type { Invoice } from '@colla/invoicing';
import type { Books } from '@colla/store';

/** What sets documents and prints them. */
export interface Paper {
  invoicePdf(
    invoice: Invoice,
    on: Pick<Organisation, 'paper' | 'locale'> & Pick<Agreement, 'sentences'>,
  ): Promise<Uint8Array>;
}

/** What a document is printed with beside its record. */
export interface Printing {
  readonly books: Books;
  readonly paper: Paper;
  readonly now: Temporal.Instant;
  readonly organisation: Organisation;
  readonly engagement: Engagement | undefined;
}

/** Prints an invoice and keeps the document. Its terms stand beside what was worked out by them, as they were agreed. */
export async function keepInvoice(
  invoice: Invoice,
  { books, paper, now, organisation, engagement }: Printing,
): Promise<void> {
  const { paper: size, locale } = organisation;
  const sentences = engagement && hasAgreement(engagement) ? engagement.agreement.sentences : [];
  const bytes = await paper.invoicePdf(invoice, { paper: size, locale, sentences });
  const { id: of, series, ordinal, number } = invoice;
  await books.keepDocument({ kind: 'invoice', of, series, ordinal, number, bytes, issuedAt: now });
}
