// An invoice: issued once, numbered, never altered.

import { Temporal } from '@colla/calendar';
import { type Currency, LARGEST } from '@colla/money';
import { type OrRefusal, Refusal } from '@colla/refusal';
import type { Billable, InvoiceLine, InvoiceTax } from './billable.ts';
import { type DuePart, dueBy } from './due-parts.ts';
import { writeNumber } from './number.ts';

/** A name and address as they stood when the document was issued. */
export interface Named {
  readonly name: string;
  readonly address: readonly string[];
  readonly reference?: string;
  readonly taxNumber?: string;
}

/** A draft of an invoice: all but its number. */
export interface InvoiceDraft {
  readonly engagement: string;
  readonly title: string;
  readonly currency: Currency;
  readonly billable: Billable;
  readonly from: Named;
  readonly to: Named & { readonly party: string };
  readonly payTo: readonly string[];
  /** The day each call of the lines took place, for the reader, by call id. */
  readonly days: Readonly<Record<string, Temporal.PlainDate>>;
  /** What the invoice says of when it is due: the payment clause as agreed. */
  readonly terms?: string;
  readonly note?: string;
  readonly issuedOn: Temporal.PlainDate;
  readonly dueOn: Temporal.PlainDate;
}

export interface Invoice {
  readonly id: string;
  readonly series: string;
  /** Place in its series: 1, 2, 3 … without a gap. */
  readonly ordinal: number;
  readonly number: string;
  /** Its place among the sections of one document, 1, 2, 3 …, where several engagements stand under one number. */
  readonly section?: number;
  readonly engagement: string;
  readonly title: string;
  readonly currency: Currency;
  readonly payer: string;
  readonly from: Named;
  readonly to: Named & { readonly party: string };
  readonly payTo: readonly string[];
  /** Each with the day on which it was earned or spent; of several calls, the last. */
  readonly lines: readonly InvoiceLine[];
  readonly taxes: readonly InvoiceTax[];
  readonly net: bigint;
  readonly tax: bigint;
  readonly total: bigint;
  readonly terms?: string;
  readonly note?: string;
  readonly issuedOn: Temporal.PlainDate;
  readonly dueOn: Temporal.PlainDate;
}

/** The days after issue at which an invoice is due where the agreement says nothing: common practice. */
export const USUAL_DAYS = 30;

/**
 * Whether a draft may be issued; the refusal where nothing is left to invoice, more was invoiced than is owed, or
 * a sum is larger than the books can keep. Asked before a number is taken, so that no number is ever lost.
 */
export function issuable({ billable }: Pick<InvoiceDraft, 'billable'>): OrRefusal<true> {
  if (sumsOf(billable).some((sum) => sum > LARGEST || sum < -LARGEST)) return tooLarge(billable);
  if (billable.total > 0n) return true;
  if (billable.total === 0n) {
    return new Refusal(
      'invoicing/nothing-to-invoice',
      'Everything the statement says has been invoiced already. Invoice again once something more is played or spent.',
      { payer: billable.payer },
    );
  }
  return new Refusal(
    'invoicing/less-than-invoiced',
    'The statement now says less than was invoiced, and the difference is owed back to the payer. Issue a credit note for it.',
    {
      payer: billable.payer,
      minorUnits: String(-billable.total),
    },
  );
}

function sumsOf({ lines, taxes, net, tax, total }: Billable): bigint[] {
  return [net, tax, total, ...[...lines, ...taxes].map(({ amount }) => amount)];
}

function tooLarge({ payer }: Billable): Refusal {
  return new Refusal(
    'money/too-large',
    'The invoice comes to more than the books can hold. Check the prices of the tariff and the times of the calls.',
    { payer },
  );
}

/** The invoice itself, under the next number of its series. The draft must be issuable. */
export function issue(
  draft: InvoiceDraft,
  as: { id: string; series: string; ordinal: number; section?: number },
): Invoice {
  const { billable, days, ...kept } = draft;
  const { payer, taxes, net, tax, total } = billable;
  if (total <= 0n) throw new Error('an invoice of nothing was to be issued');
  const lines = dated(billable.lines, days);
  return { ...kept, ...as, number: writeNumber(as), payer, lines, taxes, net, tax, total };
}

/** Lines with the day on which each was earned or spent; of several calls, the last. */
export function dated(lines: readonly InvoiceLine[], days: InvoiceDraft['days']): InvoiceLine[] {
  return lines.map((line) => {
    const on = line.on ?? lastDay(line.calls.flatMap((id) => days[id] ?? []));
    return on ? { ...line, on } : line;
  });
}

function lastDay(days: readonly Temporal.PlainDate[]): Temporal.PlainDate | undefined {
  return [...days].sort(Temporal.PlainDate.compare).at(-1);
}

/** How an invoice stands, given what was paid on it by `today`. Minor units. */
export interface InvoiceStanding {
  readonly paid: bigint;
  readonly owed: bigint;
  readonly is: 'open' | 'part paid' | 'overdue' | 'paid';
}

/**
 * An invoice is overdue from the day after it was due, in the organisation's own calendar; one that is due in parts, once
 * less was paid than was due by then.
 */
export function standingOf(
  invoice: Pick<Invoice, 'total' | 'dueOn'> & { readonly parts?: readonly DuePart[] },
  paid: bigint,
  today: Temporal.PlainDate,
): InvoiceStanding {
  const owed = invoice.total - paid;
  if (owed <= 0n) return { paid, owed, is: 'paid' };
  const { parts = [{ on: invoice.dueOn, amount: invoice.total }] } = invoice;
  if (dueBy(today.subtract({ days: 1 }), parts) > paid) return { paid, owed, is: 'overdue' };
  return { paid, owed, is: paid > 0n ? 'part paid' : 'open' };
}
