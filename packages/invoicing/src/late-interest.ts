// Interest and a sum on an invoice that is paid late, by clause or by statute: proposed, and charged only when somebody
// says so.

import { Temporal } from '@colla/calendar';
import { fits, type Posted } from '@colla/ledger';
import { type Currency, toDecimal } from '@colla/money';
import { type Facts, type LateCharge, latePayment, type Terms } from '@colla/rates';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import type { OpenInvoice } from './allocation.ts';

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
  readonly invoice: Pick<OpenInvoice, 'invoice' | 'dueOn' | 'currency'>;
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
  const owedWhenDue = sumOf(changes(of).filter(({ on }) => !isAfter(on, of.invoice.dueOn)));
  const whole = charge(of, owedWhenDue, of.on);
  if (refused(whole) || whole === undefined || whole.total === 0n) return refused(whole) ? whole : undefined;
  let interest = 0n;
  const said: string[] = [];
  for (const { amount, until } of lateParts(of, owedWhenDue)) {
    const part = charge(of, amount < 0n ? -amount : amount, until);
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

function charge(
  { facts, terms, invoice }: Lateness,
  amount: bigint,
  on: Temporal.PlainDate,
): OrRefusal<LateCharge> | undefined {
  return latePayment(facts, terms, { amount, dueOn: invoice.dueOn, on });
}

/**
 * The debt by the days until which its parts were owed: what was paid, until then; what came back because a payment
 * bounced, less the days it was paid; the rest until the day one looks.
 */
function lateParts(of: Lateness, owedWhenDue: bigint): { amount: bigint; until: Temporal.PlainDate }[] {
  let left = owedWhenDue;
  const parts = changes(of)
    .filter(({ on }) => isAfter(on, of.invoice.dueOn))
    .map(({ on, amount }) => {
      // What pays interest that was charged, beyond the debt itself, is no part of the debt.
      const change = left + amount < 0n ? -left : amount;
      left += change;
      return { amount: -change, until: on };
    });
  return [...parts, { amount: left, until: of.on }].filter(({ amount }) => amount !== 0n);
}

/**
 * What was asked for and settled on the invoice up to the day one looks, as debits, by day; without interest charged.
 * What a credit note took off was never owed, so it counts from the day the debt was due.
 */
function changes(of: Lateness): Posted[] {
  const { dueOn } = of.invoice;
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

function isAfter(on: Temporal.PlainDate, day: Temporal.PlainDate): boolean {
  return Temporal.PlainDate.compare(on, day) > 0;
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
