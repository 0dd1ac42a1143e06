import { readDay, type Temporal } from '@colla/calendar';
import { hasAgreement, type Organisation, statementUnder } from '@colla/engagements';
import { draftInvoice, invoiceSeries, standingOf } from '@colla/invoicing';
import type { KeptInvoice } from '@colla/store';
import { type InvoiceJson, present, showInvoice, showPage } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { enteringAt } from '../entering.ts';
import { keepInvoice } from '../paper.ts';
import { found, must, noTerms, refuse } from '../refusals.ts';

export const invoices = {
  listInvoices: async ({ query, books, now }) => {
    const [page, organisation] = await Promise.all([books.invoices(query), books.organisation()]);
    return showPage(page, shown(organisation, now));
  },

  issueInvoice: async ({ params: { id }, body, books, now, newId, paper }) => {
    const [organisation, kept] = await Promise.all([books.organisation(), books.lockEngagement(id)]);
    const engagement = found(kept, 'engagement');
    if (!hasAgreement(engagement)) return refuse(noTerms);
    const at = now.toZonedDateTimeISO(organisation.zone);
    const issuedOn =
      body.issuedOn === undefined ? at.toPlainDate() : must(readDay(body.issuedOn), '/issuedOn');
    const party = new Map(Object.entries(engagement.payers)).get(body.payer);
    const [earlier, to] = await Promise.all([
      books.askedOf(id),
      party === undefined ? undefined : books.party(party),
    ]);
    const statement = statementUnder(engagement, engagement.agreement, at, organisation);
    const { payer, note, rate } = body;
    const draft = must(
      draftInvoice({
        engagement,
        statement,
        payer,
        to,
        earlier,
        organisation,
        issuedOn,
        ...present({ note }),
      }),
    );
    const invoice = await books.issueInvoice(
      draft,
      { id: newId(), series: invoiceSeries(issuedOn) },
      enteringAt(now, organisation, { rate, currency: draft.currency }),
    );
    await keepInvoice(invoice, { books, paper, now, organisation, engagement });
    return shown(organisation, now)({ invoice, paid: 0n });
  },

  getInvoice: async ({ params, books, now }) => {
    const [kept, organisation] = await Promise.all([books.invoice(params.id), books.organisation()]);
    return shown(organisation, now)(found(kept, 'invoice'));
  },
} satisfies Partial<Handlers>;

/** An invoice as it stands today, in the organisation's own calendar. */
function shown({ zone }: Organisation, now: Temporal.Instant): (kept: KeptInvoice) => InvoiceJson {
  const today = now.toZonedDateTimeISO(zone).toPlainDate();
  return ({ invoice, paid }) => showInvoice(invoice, standingOf(invoice, paid, today));
}
