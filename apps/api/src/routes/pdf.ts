import { fileName } from '@colla/invoicing';
import type { Books } from '@colla/store';
import type { Request } from 'express';
import { type Admitted, type Means, paramsOf } from '../answer.ts';
import { keepInvoice } from '../paper.ts';
import { found } from '../refusals.ts';

/** The invoice as it was issued, found by its id alone; its file name is made of its number. */
export function sendPdf(means: Means) {
  return async (request: Request, response: Admitted): Promise<void> => {
    const { id = '' } = paramsOf(request);
    const { organisation } = response.locals;
    const kept = await means.store.reading(organisation, (books) => books.document(id));
    const { bytes, number, kind } = kept ?? (await printedLate(id, organisation, means));
    response.type('application/pdf');
    response.set('Content-Disposition', `inline; filename="${fileName(number, kind)}"`);
    response.send(Buffer.from(bytes));
  };
}

/** An invoice of before documents were kept is printed when it is first asked for, and kept from then on. */
async function printedLate(id: string, organisation: string, { store, paper, now }: Means) {
  return store.within(organisation, async (books: Books) => {
    const [kept, whose] = await Promise.all([books.invoice(id), books.organisation()]);
    const { invoice } = found(kept, 'invoice');
    const engagement = await books.engagement(invoice.engagement);
    await keepInvoice(invoice, { books, paper, now: now(), organisation: whose, engagement });
    return found(await books.document(id), 'invoice');
  });
}
