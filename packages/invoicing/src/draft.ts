// From what is left to ask of a payer to a draft that lacks only its number.

import { Temporal } from '@colla/calendar';
import {
  type Agreed,
  type Cancelled,
  factsOf,
  type Organisation,
  type Party,
  type Settled,
} from '@colla/engagements';
import { timesOf } from '@colla/hours';
import { dueOn, type Facts, type Statement } from '@colla/rates';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import { type Asked, type Billable, billable } from './billable.ts';
import { type InvoiceDraft, issuable, type Named, USUAL_DAYS } from './invoice.ts';

/** What a draft is made from. `payer` is the role the statement names, `to` the party that has it. */
export interface Drafting {
  readonly engagement: Agreed | Settled | Cancelled;
  readonly statement: Statement;
  readonly payer: string;
  readonly to: Party | undefined;
  readonly earlier: readonly Asked[];
  readonly organisation: Organisation;
  readonly issuedOn: Temporal.PlainDate;
  readonly note?: string;
}

/**
 * The draft of the next invoice to one payer, with its due day and terms as they were agreed. Refuses where
 * nobody has the payer's role, where there is nothing to ask for, a day before the agreement, and one after the day of
 * the statement: what is not yet known cannot be asked for.
 */
export function draftInvoice(of: Drafting): OrRefusal<InvoiceDraft> {
  const { engagement, statement, payer, to, organisation, issuedOn } = of;
  if (to === undefined) return nobodyPays(payer);
  const left = billable(statement, payer, of.earlier);
  const day = mayIssue(of);
  if (refused(day)) return day;
  const may = issuable({ billable: left });
  if (refused(may)) return may;
  const terms = engagement.agreement.sentences.find(({ clause }) => clause === statement.payment?.clause);
  return {
    engagement: engagement.id,
    title: engagement.title,
    currency: statement.currency,
    billable: left,
    from: letterheadOf(organisation),
    to: { party: to.id, ...addressed(to) },
    payTo: organisation.payTo,
    days: daysOf(engagement, left),
    ...(terms ? { terms: terms.sentence } : {}),
    ...(of.note === undefined ? {} : { note: of.note }),
    issuedOn,
    dueOn: dueDay({ statement, issuedOn, facts: factsOf(engagement, organisation, engagement.agreement) }),
  };
}

/** Whether a document can have this day; refuses one before the agreement, and one after the day of the statement. */
export function mayIssue({
  engagement,
  statement,
  issuedOn,
}: Pick<Drafting, 'engagement' | 'statement' | 'issuedOn'>): OrRefusal<true> {
  const agreed = engagement.agreement.agreedAt.toPlainDate();
  if (Temporal.PlainDate.compare(issuedOn, agreed) < 0) return tooEarly(agreed);
  const today = statement.asOf.toPlainDate();
  return Temporal.PlainDate.compare(issuedOn, today) > 0 ? ahead(issuedOn, today) : true;
}

/** Why there is nobody to address a document to. */
export function nobodyPays(payer: string): Refusal {
  return new Refusal(
    'invoicing/nobody-pays',
    `Nobody is entered as “${payer}” of this engagement. Say who that is, and invoice again.`,
    { payer },
    '/payer',
  );
}

function tooEarly(agreed: Temporal.PlainDate): Refusal {
  return new Refusal(
    'invoicing/issued-too-early',
    `This was agreed on ${agreed}, and nothing is issued before that. Correct the day of issue.`,
    { agreed: agreed.toString() },
    '/issuedOn',
  );
}

function ahead(issuedOn: Temporal.PlainDate, today: Temporal.PlainDate): Refusal {
  return new Refusal(
    'invoicing/issued-ahead',
    `Today is ${today}, and what is issued on ${issuedOn} would say what is not known yet. Issue it today, or on that day.`,
    { today: today.toString() },
    '/issuedOn',
  );
}

/** What a due day is read off. */
interface Due {
  readonly statement: Statement;
  readonly facts: Facts;
  readonly issuedOn: Temporal.PlainDate;
}

/** The day the agreed terms name, or the usual one; never before the invoice itself. */
export function dueDay({ statement, facts, issuedOn }: Due): Temporal.PlainDate {
  const agreed = statement.payment && dueOn(statement.payment.due, facts, issuedOn);
  const due = agreed ?? issuedOn.add({ days: USUAL_DAYS });
  return Temporal.PlainDate.compare(due, issuedOn) < 0 ? issuedOn : due;
}

/** Who a document comes from. */
export function letterheadOf({ name, address, taxNumber }: Organisation): Named {
  return { name, address, ...(taxNumber === undefined ? {} : { taxNumber }) };
}

/** Who a document is addressed to. */
export function addressed({ name, address, reference }: Party): Named {
  return { name, address, ...(reference === undefined ? {} : { reference }) };
}

/** The day of each call the lines speak of, by call id. */
export function daysOf(
  { calls }: Drafting['engagement'],
  { lines }: Billable,
): Record<string, Temporal.PlainDate> {
  const spoken = new Set(lines.flatMap((line) => line.calls));
  return Object.fromEntries(
    calls.filter(({ id }) => spoken.has(id)).map((call) => [call.id, timesOf(call).start.toPlainDate()]),
  );
}
