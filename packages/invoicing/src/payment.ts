// A payment: money received, allocated to invoices. What is more than owed is kept as credit, never lost.

import { Temporal } from '@colla/calendar';
import type { Currency } from '@colla/money';
import { toDecimal } from '@colla/money';
import { type OrRefusal, Refusal } from '@colla/refusal';

export const METHODS = ['bank transfer', 'cash', 'cheque', 'card'] as const;
export type Method = (typeof METHODS)[number];

/** So much of a payment for an invoice, in minor units. */
export interface Allocation {
  readonly invoice: string;
  readonly amount: bigint;
}

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

/** What a payment is set against: an open invoice and what is owed on it. */
export interface Owed {
  readonly invoice: string;
  readonly number: string;
  readonly owed: bigint;
  readonly currency: Currency;
  readonly party: string;
}

export type Received = Omit<Payment, 'allocations' | 'credit' | 'party'>;

/**
 * Records money received for an invoice. Refuses nothing or less, another currency than the invoice's, a day after
 * `today`, and more than is owed unless `keepCredit` says that the rest is kept as the payer's credit.
 */
export function receive(
  received: Received,
  against: Owed,
  { keepCredit, today }: { keepCredit: boolean; today: Temporal.PlainDate },
): OrRefusal<Payment> {
  const { amount, currency } = received;
  if (amount <= 0n) {
    return new Refusal(
      'invoicing/no-payment',
      'A payment is more than nothing. Enter what was received.',
      {},
      '/amount',
    );
  }
  if (currency !== against.currency) {
    return new Refusal(
      'invoicing/other-currency',
      `Invoice ${against.number} is in ${against.currency}, the payment in ${currency}. Enter what it came to in ${against.currency}.`,
      { currency },
      '/currency',
    );
  }
  if (Temporal.PlainDate.compare(received.receivedOn, today) > 0) return ahead(received, today);
  const over = amount - against.owed;
  if (over > 0n && !keepCredit) return tooMuch(against, over);
  const allocated = over > 0n ? against.owed : amount;
  const allocations = allocated > 0n ? [{ invoice: against.invoice, amount: allocated }] : [];
  return { ...received, party: against.party, allocations, credit: amount - allocated };
}

function ahead({ receivedOn }: Received, today: Temporal.PlainDate): Refusal {
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
