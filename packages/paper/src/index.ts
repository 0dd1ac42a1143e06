// Documents: words set as pages of one family, and printed.

import type { Invoice } from '@colla/invoicing';
import { fonts } from './fonts.ts';
import { invoiceLayout } from './invoice.ts';
import { print } from './print.ts';
import type { InvoiceReader } from './reading.ts';

export { type Layout, PAPERS, type Paper } from './page.ts';
export type { InvoiceReader } from './reading.ts';
export { fonts, invoiceLayout, print };

/** An invoice as a PDF. The same invoice for the same reader gives the same bytes. */
export async function invoicePdf(invoice: Invoice, reader: InvoiceReader): Promise<Uint8Array> {
  const shared = await fonts();
  return print(invoiceLayout(invoice, reader, shared.faces), shared);
}
