// A deposit request: asks for money before the work. It posts nothing: what can still be called off is no debt.

import { Temporal } from '@colla/calendar';
import {
  type Agreed,
  type Cancelled,
  factsOf,
  type Organisation,
  type Party,
  type Settled,
} from '@colla/engagements';
import { type Currency, toDecimal } from '@colla/money';
import { type DepositDue, dueOn, type Statement } from '@colla/rates';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import { addressed, letterheadOf, mayIssue, nobodyPays } from './draft.ts';
import { type Named, USUAL_DAYS } from './invoice.ts';
import { writeNumber } from './number.ts';

/** A draft of a deposit request: all but its number. */
export interface DepositRequestDraft {
  readonly engagement: string;
  readonly title: string;
  readonly currency: Currency;
  readonly payer: string;
  readonly from: Named;
  readonly to: Named & { readonly party: string };
  readonly payTo: readonly string[];
  readonly amount: bigint;
  readonly arithmetic: string;
  /** The clause as agreed. */
  readonly terms?: string;
  readonly note?: string;
  readonly issuedOn: Temporal.PlainDate;
  readonly dueOn: Temporal.PlainDate;
  /** Until when it is given back on request, where the agreement says so. */
  readonly refundableUntil?: Temporal.PlainDate;
}

export interface DepositRequest extends DepositRequestDraft {
  readonly id: string;
  readonly series: string;
  readonly ordinal: number;
  readonly number: string;
}

/** What a deposit request is made from. `asked` is what was asked of the engagement before; minor units. */
export interface DepositAsking {
  readonly engagement: Agreed | Settled | Cancelled;
  readonly statement: Statement;
  readonly payer: string;
  readonly to: Party | undefined;
  readonly asked: bigint;
  /** All that is left to ask, where nothing is said. */
  readonly amount?: bigint;
  readonly organisation: Organisation;
  readonly issuedOn: Temporal.PlainDate;
  readonly note?: string;
}

/**
 * Asks a payer for the deposit of the agreement, or for a part of it where several pay. Refuses where no deposit is
 * agreed, where it has been asked for, more than is left of it, and a day no document can have.
 */
export function draftDepositRequest(of: DepositAsking): OrRefusal<DepositRequestDraft> {
  const { engagement, statement, payer, to, organisation } = of;
  const { deposit, currency } = statement;
  if (to === undefined) return nobodyPays(payer);
  if (!deposit) return noDeposit();
  const left = deposit.amount - of.asked;
  const amount = of.amount ?? left;
  if (left <= 0n || amount <= 0n || amount > left) return notToAsk(left, currency);
  const day = mayIssue(of);
  if (refused(day)) return day;
  const terms = engagement.agreement.sentences.find(({ clause }) => clause === deposit.clause);
  return {
    ...{ engagement: engagement.id, title: engagement.title, currency, payer, amount },
    from: letterheadOf(organisation),
    to: { party: to.id, ...addressed(to) },
    payTo: organisation.payTo,
    arithmetic: deposit.arithmetic,
    ...(terms ? { terms: terms.sentence } : {}),
    ...(of.note === undefined ? {} : { note: of.note }),
    ...daysOfDeposit(deposit, of),
  };
}

function daysOfDeposit(
  deposit: DepositDue,
  { engagement, organisation, issuedOn }: DepositAsking,
): Pick<DepositRequestDraft, 'issuedOn' | 'dueOn' | 'refundableUntil'> {
  const facts = factsOf(engagement, organisation, engagement.agreement);
  const due = dueOn(deposit.due, facts, issuedOn) ?? issuedOn.add({ days: USUAL_DAYS });
  const until = deposit.refundable && dueOn(deposit.refundable, facts, issuedOn);
  return {
    issuedOn,
    dueOn: Temporal.PlainDate.compare(due, issuedOn) < 0 ? issuedOn : due,
    ...(until ? { refundableUntil: until } : {}),
  };
}

/** The request itself, under the next number of its series. */
export function issueDepositRequest(
  draft: DepositRequestDraft,
  as: { id: string; series: string; ordinal: number },
): DepositRequest {
  return { ...draft, ...as, number: writeNumber(as) };
}

function noDeposit(): Refusal {
  return new Refusal(
    'invoicing/no-deposit',
    'No deposit is agreed, so there is none to ask for. Ask for the money by an invoice, or agree on terms with a deposit.',
    {},
  );
}

function notToAsk(left: bigint, currency: Currency): Refusal {
  const most = toDecimal(left > 0n ? left : 0n, currency);
  return new Refusal(
    'invoicing/deposit-asked',
    `${most} is left to ask for of the deposit that is agreed. Ask for more than nothing and at most that.`,
    { left: most },
    '/amount',
  );
}
