// A deposit: money held as a debt to the payer until it is applied to an invoice or returned. What a cancellation clause
// keeps of it is asked for by the invoice of the cancellation, and applied to that.

import type { Temporal } from '@colla/calendar';
import { type Currency, toDecimal } from '@colla/money';
import type { DepositDue } from '@colla/rates';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import {
  type Against,
  type Allocation,
  allocated,
  fill,
  type OpenInvoice,
  oldestFirst,
  setAgainst,
} from './allocation.ts';
import { nothingOpen } from './credit.ts';
import { type Method, mayCome, type Received, type Receiving } from './payment.ts';

/** Money received as a deposit. `amount` is what came: `credit` of it was beyond the deposit, the rest is held. */
export interface Deposit {
  readonly id: string;
  readonly engagement: string;
  readonly party: string;
  readonly receivedOn: Temporal.PlainDate;
  readonly amount: bigint;
  readonly currency: Currency;
  readonly method: Method;
  readonly reference?: string;
  readonly credit: bigint;
}

/** What is held of one payer for one engagement, or may still come; minor units. */
export interface HeldDeposit {
  readonly engagement: string;
  readonly party: string;
  readonly amount: bigint;
  readonly currency: Currency;
}

/**
 * Records a deposit received: `awaited` is what was asked for and has not come. Refuses nothing or less, another
 * currency, a day after `today`, and more than is awaited unless the rest is kept as credit.
 */
export function receiveDeposit(
  received: Received,
  awaited: HeldDeposit,
  { keepCredit, today }: Receiving,
): OrRefusal<Deposit> {
  const { amount, currency } = received;
  const { engagement, party } = awaited;
  const may = mayCome(received, today);
  if (refused(may)) return may;
  if (currency !== awaited.currency) return otherCurrency(awaited, currency);
  const over = amount - awaited.amount;
  if (over > 0n && !keepCredit) return moreThanAwaited(awaited, over);
  return { ...received, engagement, party, credit: over > 0n ? over : 0n };
}

function otherCurrency({ currency }: HeldDeposit, given: Currency): Refusal {
  return new Refusal(
    'invoicing/other-currency',
    `The deposit is in ${currency}, the payment in ${given}. Enter what it came to in ${currency}.`,
    { currency: given },
    '/currency',
  );
}

function moreThanAwaited({ amount, currency }: HeldDeposit, over: bigint): Refusal {
  const [awaited, rest] = [toDecimal(amount, currency), toDecimal(over, currency)];
  return new Refusal(
    'invoicing/more-than-deposit',
    `Only ${awaited} of the deposit is still to come. Keep the other ${rest} as credit, or correct the amount.`,
    { awaited, over: rest },
    '/amount',
  );
}

/** A deposit, or a part of it, that settles invoices of its engagement: it is earned. */
export interface DepositApplied {
  readonly id: string;
  readonly engagement: string;
  readonly party: string;
  readonly on: Temporal.PlainDate;
  readonly currency: Currency;
  readonly allocations: readonly Allocation[];
}

/** Settles invoices with a deposit. Refuses those of another engagement, where none is held or open, and what `setAgainst` does. */
export function applyDeposit(
  of: Pick<DepositApplied, 'id' | 'on'>,
  held: HeldDeposit,
  { open, against }: { readonly open: readonly OpenInvoice[]; readonly against: Against },
): OrRefusal<DepositApplied> {
  const { engagement, party, currency } = held;
  if (held.amount <= 0n) return noneHeld();
  const theirs = open.filter((invoice) => invoice.engagement === engagement);
  const allocations = setAgainst(held, theirs, against);
  if (refused(allocations)) return allocations;
  if (allocations.length === 0) return nothingOpen(party);
  return { ...of, engagement, party, currency, allocations };
}

function noneHeld(): Refusal {
  return new Refusal(
    'invoicing/no-deposit-held',
    'No deposit is held for this engagement. Enter it once it comes.',
  );
}

/** A deposit, or a part of it, paid back. */
export interface DepositReturned {
  readonly id: string;
  readonly engagement: string;
  readonly party: string;
  readonly on: Temporal.PlainDate;
  readonly amount: bigint;
  readonly currency: Currency;
  readonly method: Method;
  readonly reference?: string;
}

/** Pays a deposit back. Refuses nothing or less, and more than is held. */
export function returnDeposit(
  of: Pick<DepositReturned, 'id' | 'on' | 'amount' | 'method' | 'reference'>,
  { engagement, party, amount, currency }: HeldDeposit,
): OrRefusal<DepositReturned> {
  if (of.amount > 0n && of.amount <= amount) return { ...of, engagement, party, currency };
  const most = toDecimal(amount, currency);
  return new Refusal(
    'invoicing/more-than-held',
    `${most} is held as a deposit. Pay back more than nothing and at most that.`,
    { held: most },
    '/amount',
  );
}

/** What becomes of a deposit next: so much for each invoice, and what is given back. Proposed, never done unasked. */
export interface DepositNext {
  readonly apply: readonly Allocation[];
  readonly giveBack: bigint;
}

/**
 * What the agreement says becomes of a deposit now. `done` is true once nothing is left to play and to invoice: then
 * it settles what is open and the rest is given back, also where it counts towards nothing, for what was not paid
 * is what it is there for. Before, it settles an invoice only where it counts towards the next one. So where the
 * pianist cancels, and nothing is asked for, all of it is given back; and where a clause keeps some of it, that much is kept.
 */
export function depositNext(
  held: HeldDeposit,
  { counts, open, done }: { counts: DepositDue['counts']; open: readonly OpenInvoice[]; done: boolean },
): DepositNext {
  const theirs = open.filter(
    ({ engagement, party, currency }) =>
      engagement === held.engagement && party === held.party && currency === held.currency,
  );
  const apply = done || counts === 'the next invoice' ? fill(held.amount, oldestFirst(theirs)) : [];
  return { apply, giveBack: done ? held.amount - allocated(apply) : 0n };
}
