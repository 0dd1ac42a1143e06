// A payment: money received, allocated to invoices. What is more than owed is kept as credit, never lost.

import { Temporal } from '@colla/calendar';
import type { Currency } from '@colla/money';
import { toDecimal } from '@colla/money';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import {
  type Against,
  type Allocation,
  allocated,
  type OpenInvoice,
  type Owed,
  otherCurrency,
  setAgainst,
} from './allocation.ts';

export const METHODS = ['bank transfer', 'cash', 'cheque', 'card'] as const;
export type Method = (typeof METHODS)[number];

/** `amount` is the sum of the allocations and of `credit`, what the payer may use later. */
export interface Payment {
  readonly id: string;
  readonly party: string;
  readonly receivedOn: Temporal.PlainDate;
  readonly amount: bigint;
  readonly currency: Currency;
  readonly method: Method;
  readonly reference?: string;
  readonly allocations: readonly Allocation[];
  readonly credit: bigint;
}

export type Received = Omit<Payment, 'allocations' | 'credit' | 'party'>;

/** What is done with money beyond what is owed, and the day on which it is entered. */
export interface Receiving {
  readonly keepCredit: boolean;
  readonly today: Temporal.PlainDate;
}

/**
 * Records money received for an invoice. Refuses nothing or less, another currency than the invoice's, a day after
 * `today`, and more than is owed unless `keepCredit` says that the rest is kept as the payer's credit.
 */
export function receive(
  received: Received,
  against: Owed,
  { keepCredit, today }: Receiving,
): OrRefusal<Payment> {
  const { amount, currency } = received;
  const may = mayCome(received, today);
  if (refused(may)) return may;
  if (currency !== against.currency) return otherCurrency(against, currency);
  const over = amount - against.owed;
  if (over > 0n && !keepCredit) return tooMuch(against, over);
  const allocations = paidOn(against, over > 0n ? against.owed : amount);
  return { ...received, party: against.party, allocations, credit: amount - allocated(allocations) };
}

function paidOn({ invoice }: Owed, amount: bigint): Allocation[] {
  return amount > 0n ? [{ invoice, amount }] : [];
}

/**
 * Records money received from a payer for several invoices, oldest first or by hand. Refuses what `setAgainst`
 * refuses, nothing or less, a day after `today`, and a rest unless `keepCredit` says that it is kept as credit.
 */
export function receiveFor(
  received: Received,
  from: { readonly party: string; readonly open: readonly OpenInvoice[]; readonly against: Against },
  { keepCredit, today }: Receiving,
): OrRefusal<Payment> {
  const { amount, currency } = received;
  const may = mayCome(received, today);
  if (refused(may)) return may;
  const allocations = setAgainst({ party: from.party, amount, currency }, from.open, from.against);
  if (refused(allocations)) return allocations;
  const credit = amount - allocated(allocations);
  if (credit > 0n && !keepCredit) return left(received, credit);
  return { ...received, party: from.party, allocations, credit };
}

/** Whether money can have come; refuses nothing or less, and a day after `today`. */
export function mayCome(
  received: Pick<Received, 'amount' | 'receivedOn'>,
  today: Temporal.PlainDate,
): OrRefusal<true> {
  if (received.amount <= 0n) {
    return new Refusal(
      'invoicing/no-payment',
      'A payment is more than nothing. Enter what was received.',
      {},
      '/amount',
    );
  }
  return Temporal.PlainDate.compare(received.receivedOn, today) > 0 ? ahead(received, today) : true;
}

function ahead({ receivedOn }: Pick<Received, 'receivedOn'>, today: Temporal.PlainDate): Refusal {
  return new Refusal(
    'invoicing/received-ahead',
    `Today is ${today}, and money of ${receivedOn} has not come yet. Correct the day it came.`,
    { today: today.toString() },
    '/receivedOn',
  );
}

function tooMuch(against: Owed, over: bigint): Refusal {
  const owed = toDecimal(against.owed, against.currency);
  const rest = toDecimal(over, against.currency);
  return new Refusal(
    'invoicing/more-than-owed',
    `Only ${owed} is owed on invoice ${against.number}. Keep the other ${rest} as credit, or correct the amount.`,
    { owed, over: rest, invoice: against.invoice },
    '/amount',
  );
}

function left({ currency }: Received, credit: bigint): Refusal {
  const rest = toDecimal(credit, currency);
  return new Refusal(
    'invoicing/more-than-owed',
    `${rest} of this is set against no invoice. Keep it as the payer’s credit, or correct the amount.`,
    { over: rest },
    '/amount',
  );
}
