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
 * nobody has the payer's role, where there is nothing to ask for, and a day before the agreement.
 */
export function draftInvoice(of: Drafting): OrRefusal<InvoiceDraft> {
  const { engagement, statement, payer, to, organisation, issuedOn } = of;
  if (to === undefined) return nobodyPays(payer);
  const left = billable(statement, payer, of.earlier);
  if (Temporal.PlainDate.compare(issuedOn, engagement.agreement.agreedAt.toPlainDate()) < 0)
    return tooEarly(of);
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

function nobodyPays(payer: string): Refusal {
  return new Refusal(
    'invoicing/nobody-pays',
    `Nobody is entered as “${payer}” of this engagement. Say who that is, and invoice again.`,
    { payer },
    '/payer',
  );
}

function tooEarly({ engagement }: Drafting): Refusal {
  const day = engagement.agreement.agreedAt.toPlainDate().toString();
  return new Refusal(
    'invoicing/issued-too-early',
    `This was agreed on ${day}, and no invoice comes before that. Correct the day of issue.`,
    { agreed: day },
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

function letterheadOf({ name, address, taxNumber }: Organisation): Named {
  return { name, address, ...(taxNumber === undefined ? {} : { taxNumber }) };
}

function addressed({ name, address, reference }: Party): Named {
  return { name, address, ...(reference === undefined ? {} : { reference }) };
}

/** The day of each call the lines speak of, by call id. */
function daysOf({ calls }: Drafting['engagement'], { lines }: Billable): Record<string, Temporal.PlainDate> {
  const spoken = new Set(lines.flatMap((line) => line.calls));
  return Object.fromEntries(
    calls.filter(({ id }) => spoken.has(id)).map((call) => [call.id, timesOf(call).start.toPlainDate()]),
  );
}
