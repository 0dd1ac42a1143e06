import type { Organisation } from '@colla/engagements';
import { fileName, type Invoice } from '@colla/invoicing';
import type { Request } from 'express';
import { type Admitted, type Means, paramsOf } from '../answer.ts';
import { found } from '../refusals.ts';

export interface Paper {
  invoicePdf(invoice: Invoice, on: Pick<Organisation, 'paper' | 'locale'>): Promise<Uint8Array>;
}

/** The invoice as a document, found by its id alone; its file name is made of its number. */
export function sendPdf({ store, paper }: Pick<Means, 'store'> & { paper: Paper }) {
  return async (request: Request, response: Admitted): Promise<void> => {
    const { id = '' } = paramsOf(request);
    const [kept, { paper: size, locale }] = await store.reading(response.locals.organisation, (books) =>
      Promise.all([books.invoice(id), books.organisation()]),
    );
    const { invoice } = found(kept, 'invoice');
    const pdf = await paper.invoicePdf(invoice, { paper: size, locale });
    response.type('application/pdf');
    response.set('Content-Disposition', `inline; filename="${fileName(invoice.number)}"`);
    response.send(Buffer.from(pdf));
  };
}
