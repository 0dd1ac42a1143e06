import { readDay } from '@colla/calendar';
import { type Owed, receive } from '@colla/invoicing';
import { currency, fromDecimal } from '@colla/money';
import type { KeptInvoice } from '@colla/store';
import { present, showPage, showPayment } from '@colla/wire';
import type { Handlers } from '../answer.ts';
import { enteringAt } from '../entering.ts';
import { found, must } from '../refusals.ts';
import { settleIfDone } from '../settling.ts';

export const payments = {
  addPayment: async ({ params, body, books, now, newId }) => {
    const [locked, organisation] = await Promise.all([books.lockInvoice(params.id), books.organisation()]);
    const kept = found(locked, 'invoice');
    const { method, reference, keepCredit, rate } = body;
    const entering = enteringAt(now, organisation, { rate, currency: kept.invoice.currency });
    const received = {
      id: newId(),
      ...moneyOf(body, kept),
      method,
      ...present({ reference }),
    };
    const payment = must(receive(received, owedOn(kept), { keepCredit, today: entering.today }));
    await books.savePayment(payment, entering);
    await settleIfDone(kept.invoice.engagement, books, now);
    return showPayment(payment);
  },

  listPayments: async ({ query, books }) => showPage(await books.payments(query), showPayment),
} satisfies Partial<Handlers>;

interface Sent {
  readonly receivedOn: string;
  readonly amount: string;
  readonly currency?: string | undefined;
}

function moneyOf(sent: Sent, { invoice }: KeptInvoice) {
  const of = sent.currency === undefined ? invoice.currency : must(currency(sent.currency), '/currency');
  return {
    receivedOn: must(readDay(sent.receivedOn), '/receivedOn'),
    amount: must(fromDecimal(sent.amount, of), '/amount'),
    currency: of,
  };
}

function owedOn({ invoice, paid }: KeptInvoice): Owed {
  const { id, number, currency, total, to } = invoice;
  return { invoice: id, number, owed: total - paid, currency, party: to.party };
}
