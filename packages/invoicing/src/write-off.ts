// A write-off: what is owed on an invoice and will not come, given up with a reason.

import { Temporal } from '@colla/calendar';
import { type Currency, toDecimal } from '@colla/money';
import { type OrRefusal, Refusal } from '@colla/refusal';
import type { OpenInvoice } from './allocation.ts';
import type { Payment } from './payment.ts';

export const WRITE_OFF_REASONS = ['rounding', 'bank charges', 'goodwill', 'cannot be collected'] as const;
export type WriteOffReason = (typeof WRITE_OFF_REASONS)[number];

/** So much of an invoice given up, in minor units. */
export interface WriteOff {
  readonly id: string;
  readonly invoice: string;
  readonly engagement: string;
  readonly party: string;
  readonly on: Temporal.PlainDate;
  readonly amount: bigint;
  readonly currency: Currency;
  readonly reason: WriteOffReason;
  readonly note?: string;
  /** The payment that came short by it; where that bounces, this is owed again too. */
  readonly payment?: string;
}

/** Gives up so much of an invoice. Refuses nothing or less, more than is owed, and a day before the invoice. */
export function writeOff(
  of: Pick<WriteOff, 'id' | 'on' | 'amount' | 'reason' | 'note' | 'payment'>,
  { invoice, engagement, party, currency, owed, number, issuedOn }: OpenInvoice,
): OrRefusal<WriteOff> {
  if (of.amount <= 0n || of.amount > owed) {
    const most = toDecimal(owed, currency);
    return new Refusal(
      'invoicing/not-to-write-off',
      `${most} is owed on invoice ${number}. Write off more than nothing and at most that.`,
      { owed: most, invoice },
      '/amount',
    );
  }
  if (Temporal.PlainDate.compare(of.on, issuedOn) < 0) {
    return new Refusal(
      'invoicing/written-off-too-early',
      `Invoice ${number} was issued on ${issuedOn}, and nothing of it is given up before. Correct the day.`,
      { issued: issuedOn.toString() },
      '/on',
    );
  }
  return { ...of, invoice, engagement, party, currency };
}

/**
 * The invoices a payment came short on by no more than `tolerance`, with what is still owed on each: proposed to be
 * written off, never done unasked. `open` is as it was before the payment.
 */
export function shortBy(
  payment: Pick<Payment, 'allocations'>,
  open: readonly OpenInvoice[],
  tolerance: bigint,
): { readonly invoice: string; readonly amount: bigint }[] {
  return payment.allocations.flatMap(({ invoice, amount }) => {
    const owed = (open.find((of) => of.invoice === invoice)?.owed ?? amount) - amount;
    return owed > 0n && owed <= tolerance ? [{ invoice, amount: owed }] : [];
  });
}
