// What was asked for and what came in: invoices in the order they were issued, payments, and what is settled by them.

import type { Temporal } from '@colla/calendar';
import { type Engagement, hasAgreement, type Organisation, settle, statementUnder } from '@colla/engagements';
import {
  draftInvoice,
  type InvoiceDraft,
  invoiceSeries,
  leftToInvoice,
  type Payment,
  receive,
  writeNumber,
} from '@colla/invoicing';
import { fromDecimal } from '@colla/money';
import { PAYER } from '@colla/rates';
import { granted } from '@colla/refusal';
import { EURO } from './cast.ts';
import type { Stage } from './engage.ts';
import type { Told, ToldInvoice, ToldPayment } from './told.ts';

/** An invoice that lacks only its number, and what was told of it. */
export interface Billed {
  readonly id: string;
  readonly draft: InvoiceDraft;
  readonly series: string;
  readonly told: ToldInvoice;
}

/** The invoices of one engagement, each for what was left to ask of its payer. */
export function billAll(engagement: Engagement, told: Told, stage: Stage, by: Organisation): Billed[] {
  const billed: Billed[] = [];
  for (const invoice of told.invoices ?? []) {
    billed.push(billOne(engagement, { told, invoice, earlier: billed }, stage, by));
  }
  return billed;
}

function billOne(
  engagement: Engagement,
  { told, invoice, earlier }: { told: Told; invoice: ToldInvoice; earlier: readonly Billed[] },
  { newId, clock, parties }: Stage,
  organisation: Organisation,
): Billed {
  if (!hasAgreement(engagement)) throw new Error(`${told.title} was invoiced before it was agreed`);
  const payer = invoice.payer ?? PAYER;
  const to = told.payers[payer];
  const issuedOn = clock.daysAgo(invoice.daysAgo);
  const draft = draftInvoice({
    engagement,
    statement: statementUnder(engagement, engagement.agreement, clock.now, organisation),
    payer,
    to: to && parties[to],
    earlier: earlier.map(({ draft }) => draft.billable),
    organisation,
    issuedOn,
    ...(invoice.note === undefined ? {} : { note: invoice.note }),
  });
  return { id: newId(), draft: granted(draft), series: invoiceSeries(issuedOn), told: invoice };
}

/** Invoices in the order they were issued, each with the number it will have in an empty book. */
export function inIssueOrder(billed: readonly Billed[]): (Billed & { number: string })[] {
  const ordinals = new Map<string, number>();
  return [...billed]
    .sort((a, b) => a.draft.issuedOn.until(b.draft.issuedOn).sign * -1)
    .map((invoice) => {
      const ordinal = (ordinals.get(invoice.series) ?? 0) + 1;
      ordinals.set(invoice.series, ordinal);
      return { ...invoice, number: writeNumber({ series: invoice.series, ordinal }) };
    });
}

/** What came in for one invoice. A sum beyond what was owed stays as the payer’s credit. */
export function receiveAll(invoice: Billed & { number: string }, { newId, clock }: Stage): Payment[] {
  const { id, number, draft } = invoice;
  let owed = draft.billable.total;
  return (invoice.told.paid ?? []).map((paid) => {
    const amount = paid.amount === undefined ? owed + euro(paid.change ?? '0') : euro(paid.amount);
    const against = { invoice: id, number, owed, currency: EURO, party: draft.to.party };
    const payment = granted(
      receive({ id: newId(), amount, ...receipt(paid, clock.daysAgo(paid.daysAgo)) }, against, {
        keepCredit: true,
        today: clock.now.toPlainDate(),
      }),
    );
    owed -= payment.amount - payment.credit;
    return payment;
  });
}

function euro(text: string): bigint {
  return granted(fromDecimal(text, EURO));
}

function receipt({ method = 'bank transfer', reference }: ToldPayment, receivedOn: Temporal.PlainDate) {
  return { receivedOn, currency: EURO, method, ...(reference === undefined ? {} : { reference }) };
}

/** Closes what is told as settled: nothing is left to invoice, nothing is owed. */
export function settled(
  engagement: Engagement,
  told: Told,
  books: { billed: readonly Billed[]; payments: readonly Payment[]; stage: Stage; house: Organisation },
): Engagement {
  if (told.ends.is !== 'settled' || !hasAgreement(engagement)) return engagement;
  const { clock } = books.stage;
  const asked = books.billed.filter(({ draft }) => draft.engagement === engagement.id);
  const statement = statementUnder(engagement, engagement.agreement, clock.now, books.house);
  const total = asked.reduce((sum, { draft }) => sum + draft.billable.total, 0n);
  const paid = books.payments
    .flatMap(({ allocations }) => allocations)
    .filter(({ invoice }) => asked.some(({ id }) => id === invoice))
    .reduce((sum, { amount }) => sum + amount, 0n);
  const toInvoice = leftToInvoice(
    statement,
    asked.map(({ draft }) => draft.billable),
  );
  const last = Math.min(...asked.flatMap(({ told }) => (told.paid ?? []).map(({ daysAgo }) => daysAgo)));
  const at = clock.daysAgo(last).toZonedDateTime({ timeZone: clock.now.timeZoneId, plainTime: '18:00' });
  return granted(settle(engagement, { at, toInvoice, owed: total - paid }));
}
