// Money set against invoices: oldest first, or by hand; never beyond the money, never beyond what an invoice is owed.

import { Temporal } from '@colla/calendar';
import { type Currency, toDecimal } from '@colla/money';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import type { DuePart } from './due-parts.ts';

/** So much of some money for an invoice, in minor units. */
export interface Allocation {
  readonly invoice: string;
  readonly amount: bigint;
}

/** What money is set against: an open invoice and what is owed on it. */
export interface Owed {
  readonly invoice: string;
  readonly number: string;
  readonly owed: bigint;
  readonly currency: Currency;
  readonly party: string;
}

/** An invoice and what the ledger says is owed on it; nothing where it is paid. */
export interface OpenInvoice extends Owed {
  readonly engagement: string;
  readonly issuedOn: Temporal.PlainDate;
  readonly dueOn: Temporal.PlainDate;
  /** Where it is due in parts: each with its day, the earliest first. */
  readonly parts?: readonly DuePart[];
}

/** Oldest first, or so much for each invoice that somebody chose. */
export type Against = 'oldest first' | readonly Allocation[];

/** Whose money it is, how much, and in what. Minor units. */
export interface Means {
  readonly party: string;
  readonly amount: bigint;
  readonly currency: Currency;
}

/**
 * Sets money against invoices. Oldest first takes those of its payer and currency and leaves the others alone; by hand
 * refuses an invoice that is not among `open`, is another payer's or in another currency or named twice, and more than
 * it is owed or the money comes to.
 */
export function setAgainst(
  means: Means,
  open: readonly OpenInvoice[],
  against: Against,
): OrRefusal<Allocation[]> {
  if (against === 'oldest first')
    return fill(means.amount, oldestFirst(open.filter((of) => fits(of, means))));
  const wrong = against.map((wish, index) => misplaced(wish, index, { means, open, against })).find(refused);
  if (wrong) return wrong;
  const over = allocated(against) - means.amount;
  return over > 0n ? beyond(means, over) : [...against];
}

/** What allocations come to. */
export function allocated(allocations: readonly Allocation[]): bigint {
  return allocations.reduce((sum, { amount }) => sum + amount, 0n);
}

/** As much for each invoice as it is owed, in the order given, until the money is used up. */
export function fill(amount: bigint, open: readonly OpenInvoice[]): Allocation[] {
  let left = amount;
  return open.flatMap(({ invoice, owed }) => {
    const filled = owed <= left;
    const part = filled ? owed : left;
    if (part <= 0n) return [];
    left -= part;
    return [{ invoice, amount: part }];
  });
}

/** By the day of issue, and on one day by number; sections under one number stay in their order. */
export function oldestFirst(open: readonly OpenInvoice[]): OpenInvoice[] {
  return open.toSorted(
    (one, other) =>
      Temporal.PlainDate.compare(one.issuedOn, other.issuedOn) || byNumber(one.number, other.number),
  );
}

function byNumber(one: string, other: string): number {
  if (one === other) return 0;
  return one < other ? -1 : 1;
}

function fits(open: OpenInvoice, { party, currency }: Means): boolean {
  return open.party === party && open.currency === currency;
}

/** Why one allocation by hand cannot be. */
function misplaced(
  { invoice, amount }: Allocation,
  index: number,
  { means, open, against }: { means: Means; open: readonly OpenInvoice[]; against: readonly Allocation[] },
): OrRefusal<true> {
  const found = open.find((of) => of.invoice === invoice);
  const at = `/allocations/${index}`;
  if (!found) return notOpen(invoice).at(at);
  if (found.currency !== means.currency) return otherCurrency(found, means.currency).at(at);
  if (found.party !== means.party) return otherPayer(found).at(at);
  if (against.findIndex((other) => other.invoice === invoice) < index) return twice(found).at(at);
  if (amount <= 0n) return ofNothing(found).at(at);
  return amount > found.owed ? moreThanOwed(found, amount).at(at) : true;
}

function notOpen(invoice: string): Refusal {
  return new Refusal(
    'invoicing/not-open',
    'That invoice is not among those that can be paid. Load them again and choose one that is.',
    { invoice },
    '/invoice',
  );
}

/** Money in one currency for an invoice in another. */
export function otherCurrency({ number, currency }: Owed, given: Currency): Refusal {
  return new Refusal(
    'invoicing/other-currency',
    `Invoice ${number} is in ${currency}, the payment in ${given}. Enter what it came to in ${currency}.`,
    { currency: given },
    '/currency',
  );
}

function otherPayer({ number, invoice }: OpenInvoice): Refusal {
  return new Refusal(
    'invoicing/other-payer',
    `Invoice ${number} is addressed to somebody else. Choose invoices of whoever the money is from.`,
    { invoice },
    '/invoice',
  );
}

function twice({ number, invoice }: OpenInvoice): Refusal {
  return new Refusal(
    'invoicing/allocated-twice',
    `Invoice ${number} is named twice. Put the two sums together.`,
    { invoice },
    '/invoice',
  );
}

function ofNothing({ number, invoice }: OpenInvoice): Refusal {
  return new Refusal(
    'invoicing/allocated-nothing',
    `Nothing is set against invoice ${number}. Leave it out, or enter a sum above nothing.`,
    { invoice },
    '/amount',
  );
}

function moreThanOwed({ number, invoice, owed, currency }: OpenInvoice, amount: bigint): Refusal {
  const most = toDecimal(owed, currency);
  return new Refusal(
    'invoicing/more-than-owed',
    `Only ${most} is owed on invoice ${number}, and ${toDecimal(amount, currency)} is set against it. Set at most ${most}.`,
    { owed: most, over: toDecimal(amount - owed, currency), invoice },
    '/amount',
  );
}

function beyond({ amount, currency }: Means, over: bigint): Refusal {
  return new Refusal(
    'invoicing/beyond-the-money',
    `The invoices chosen take ${toDecimal(amount + over, currency)}, and there is ${toDecimal(amount, currency)}. Take off ${toDecimal(over, currency)}.`,
    { over: toDecimal(over, currency) },
    '/allocations',
  );
}
