import { type Agreement, type Engagement, hasAgreement, type Organisation } from '@colla/engagements';
import { fileName, type Invoice } from '@colla/invoicing';
import type { Request } from 'express';
import { type Admitted, type Means, paramsOf } from '../answer.ts';
import { found } from '../refusals.ts';

export interface Paper {
  invoicePdf(
    invoice: Invoice,
    on: Pick<Organisation, 'paper' | 'locale'> & Pick<Agreement, 'sentences'>,
  ): Promise<Uint8Array>;
}

/** The invoice as a document, found by its id alone; its file name is made of its number. */
export function sendPdf({ store, paper }: Pick<Means, 'store'> & { paper: Paper }) {
  return async (request: Request, response: Admitted): Promise<void> => {
    const { id = '' } = paramsOf(request);
    const { invoice, engagement, organisation } = await store.reading(
      response.locals.organisation,
      async (books) => {
        const [kept, organisation] = await Promise.all([books.invoice(id), books.organisation()]);
        const { invoice } = found(kept, 'invoice');
        return { invoice, organisation, engagement: await books.engagement(invoice.engagement) };
      },
    );
    const { paper: size, locale } = organisation;
    const pdf = await paper.invoicePdf(invoice, { paper: size, locale, sentences: sentencesOf(engagement) });
    response.type('application/pdf');
    response.set('Content-Disposition', `inline; filename="${fileName(invoice.number)}"`);
    response.send(Buffer.from(pdf));
  };
}

/** The terms the invoice stands under, as they were agreed: what they say stands beside what was worked out by them. */
function sentencesOf(engagement: Engagement | undefined): Agreement['sentences'] {
  return engagement && hasAgreement(engagement) ? engagement.agreement.sentences : [];
}
