// Interest and a sum on an invoice that is paid late, by clause or by statute: proposed, and charged only when somebody
// says so.

import { isAfter, Temporal } from '@colla/calendar';
import { fits, type Posted } from '@colla/ledger';
import { type Currency, toDecimal } from '@colla/money';
import { type Facts, latePayment, type Terms } from '@colla/rates';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import type { OpenInvoice } from './allocation.ts';
import { stillOwed } from './due-parts.ts';

/** Late interest that was charged, added to what is owed on the invoice it is for. Minor units; outside the scope of tax. */
export interface LateInterest {
  readonly id: string;
  readonly invoice: string;
  readonly engagement: string;
  readonly party: string;
  readonly on: Temporal.PlainDate;
  readonly amount: bigint;
  readonly currency: Currency;
  readonly arithmetic: string;
}

/** What late payment of an invoice has come to by a day, what of it was charged before, and what is left to charge. */
export interface LateProposal {
  readonly interest: bigint;
  /** What is due once, however long it takes. */
  readonly sum: bigint;
  readonly charged: bigint;
  readonly left: bigint;
  readonly arithmetic: string;
}

/** What a proposal is reckoned from: the agreement of the invoice, and the postings of the ledger. */
export interface Lateness {
  readonly invoice: Pick<OpenInvoice, 'invoice' | 'dueOn' | 'parts' | 'currency'>;
  readonly posted: readonly Posted[];
  readonly facts: Facts;
  readonly terms: Terms;
  readonly on: Temporal.PlainDate;
}

/**
 * What late payment costs by `on`: each part of the debt from the day it was due until it was paid, and a fixed sum
 * once. Undefined where the agreement says nothing of it, or nothing was owed after that day. Refuses where the law's
 * reference rate is not known.
 */
export function proposeLateInterest(of: Lateness): OrRefusal<LateProposal | undefined> {
  const late = debtsOf(of).filter(({ owed, dueOn }) => owed > 0n && isAfter(of.on, dueOn));
  const [first] = late;
  if (!first) return undefined;
  const { facts, terms, on } = of;
  const owed = late.reduce((sum, debt) => sum + debt.owed, 0n);
  const whole = latePayment(facts, terms, { amount: owed, dueOn: first.dueOn, on });
  if (refused(whole) || whole === undefined || whole.total === 0n) return refused(whole) ? whole : undefined;
  let interest = 0n;
  const said: string[] = [];
  for (const { amount, dueOn, until } of late.flatMap((debt) => spansOf(debt, on))) {
    const part = latePayment(facts, terms, { amount: amount < 0n ? -amount : amount, dueOn, on: until });
    if (refused(part)) return part;
    const cost = (amount < 0n ? -1n : 1n) * (part?.interest ?? 0n);
    interest += cost;
    said.push(`${text(amount, of)} until ${until}: ${text(cost, of)}`);
  }
  if (whole.sum > 0n) said.push(`and ${text(whole.sum, of)} once`);
  const charged = sumOf(onInvoice(of).filter(isInterest));
  const left = interest + whole.sum - charged;
  return { interest, sum: whole.sum, charged, left: left > 0n ? left : 0n, arithmetic: said.join('; ') };
}

/** An amount by a day. */
interface Owing {
  readonly on: Temporal.PlainDate;
  readonly amount: bigint;
}

/** A debt of one day: what was owed of it when it was due, and how much there was left of it after each later change. */
interface OfOneDay {
  readonly dueOn: Temporal.PlainDate;
  readonly owed: bigint;
  readonly after: readonly Owing[];
}

/** The debts of an invoice, one for each day on which something of it is due; what comes settles the earliest. */
function debtsOf(of: Lateness): OfOneDay[] {
  const { parts = [{ on: of.invoice.dueOn, amount: 0n }] } = of.invoice;
  const stands = standsOf(of).map(({ on, amount }) => ({ on, each: stillOwed(amount, parts) }));
  return parts.map(({ on: dueOn }, index) => {
    const own = stands.map(({ on, each }) => ({ on, amount: each[index]?.amount ?? 0n }));
    return {
      dueOn,
      owed: own.findLast(({ on }) => !isAfter(on, dueOn))?.amount ?? 0n,
      after: own.filter(({ on }) => isAfter(on, dueOn)),
    };
  });
}

/** What was owed after each change. What pays interest that was charged, beyond the debt itself, is no part of the debt. */
function standsOf(of: Lateness): Owing[] {
  let sum = 0n;
  return changes(of).map(({ on, amount }) => {
    sum += amount;
    return { on, amount: sum > 0n ? sum : 0n };
  });
}

/**
 * A debt by the days until which its parts were owed: what was paid, until then; what came back because a payment
 * bounced, less the days it was paid; the rest until the day one looks.
 */
function spansOf({ dueOn, owed, after }: OfOneDay, on: Temporal.PlainDate) {
  let left = owed;
  const spans = after.map((now) => {
    const amount = left - now.amount;
    left = now.amount;
    return { amount, dueOn, until: now.on };
  });
  return [...spans, { amount: left, dueOn, until: on }].filter(({ amount }) => amount !== 0n);
}

/**
 * What was asked for and settled on the invoice up to the day one looks, as debits, by day; without interest charged.
 * What a credit note took off was never owed, so it counts from the day the debt was first due.
 */
function changes(of: Lateness): Posted[] {
  const dueOn = of.invoice.parts?.[0]?.on ?? of.invoice.dueOn;
  return onInvoice(of)
    .filter((posted) => !isInterest(posted))
    .map((posted) =>
      posted.source.kind === 'credit note' && isAfter(posted.on, dueOn) ? { ...posted, on: dueOn } : posted,
    )
    .sort((one, other) => Temporal.PlainDate.compare(one.on, other.on));
}

function isInterest({ source, takesBack }: Posted): boolean {
  return (takesBack ?? source).kind === 'late interest';
}

function onInvoice({ posted, invoice: { invoice, currency }, on }: Lateness): Posted[] {
  return posted.filter((of) => fits(of, { purpose: 'receivable', invoice, currency, asAt: on }));
}

function sumOf(posted: readonly Posted[]): bigint {
  return posted.reduce((sum, { amount }) => sum + amount, 0n);
}

function text(amount: bigint, { invoice }: Lateness): string {
  return toDecimal(amount, invoice.currency);
}

/** Charges what was proposed, or less. Refuses nothing or less, and more than is left of the proposal. */
export function chargeLateInterest(
  of: Pick<LateInterest, 'id' | 'on' | 'amount'>,
  { invoice, engagement, party, currency }: OpenInvoice,
  { left, arithmetic }: LateProposal,
): OrRefusal<LateInterest> {
  if (of.amount > 0n && of.amount <= left) return { ...of, invoice, engagement, party, currency, arithmetic };
  const most = toDecimal(left, currency);
  return new Refusal(
    'invoicing/more-than-late',
    `Late payment has come to ${most} that is not charged yet. Charge more than nothing and at most that.`,
    { left: most, invoice },
    '/amount',
  );
}
