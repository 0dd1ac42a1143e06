// In which parts an invoice is due: all of it on one day, or part by part as it was agreed.

import { Temporal } from '@colla/calendar';
import { dueOn, type EventDay, type Facts, type Instalment, type PaymentDue } from '@colla/rates';
import type { Invoice } from './invoice.ts';

/** So much by a day, in minor units. */
export interface DuePart {
  readonly on: Temporal.PlainDate;
  readonly amount: bigint;
}

type Dated = Pick<Invoice, 'payer' | 'total' | 'issuedOn' | 'dueOn'>;

/**
 * The parts in which an invoice is due, as the payment clause divides what the payer owes in all; the last takes the
 * rest, and none is due before the invoice is there. In the order of their days. All of it is due at once where no parts are agreed.
 */
export function duePartsOf(
  invoice: Dated,
  { payment, facts }: { payment?: PaymentDue; facts: Facts },
): DuePart[] {
  const agreed = payment?.instalments.filter(({ payer }) => payer === invoice.payer) ?? [];
  const whole = agreed.reduce((sum, part) => sum + weightOf(part), 0n);
  if (!payment || whole <= 0n) return [{ on: invoice.dueOn, amount: invoice.total }];
  const dayOf = (due: readonly EventDay[]) => dueOn(due, facts, invoice.issuedOn) ?? invoice.dueOn;
  let rest = invoice.total;
  const parts = agreed.map((of) => {
    const { ordinal, due } = of;
    const on = due ? later(dayOf(due), invoice.issuedOn) : monthly(ordinal, dayOf(payment.due), invoice);
    const part = ordinal < agreed.length ? (invoice.total * weightOf(of)) / whole : rest;
    rest -= part;
    return { on, amount: part };
  });
  return parts.toSorted((one, other) => Temporal.PlainDate.compare(one.on, other.on));
}

/** Monthly parts are equal; others are to one another as agreed. */
function weightOf({ due, amount }: Instalment): bigint {
  return due ? amount : 1n;
}

/** The first of monthly parts is due when the invoice is, each other a month after the one before, as agreed. */
function monthly(ordinal: number, first: Temporal.PlainDate, invoice: Dated): Temporal.PlainDate {
  return ordinal === 1 ? invoice.dueOn : later(first.add({ months: ordinal - 1 }), invoice.dueOn);
}

function later(one: Temporal.PlainDate, other: Temporal.PlainDate): Temporal.PlainDate {
  return Temporal.PlainDate.compare(one, other) > 0 ? one : other;
}

/** What is due by the end of a day, in minor units. */
export function dueBy(day: Temporal.PlainDate, parts: readonly DuePart[]): bigint {
  return parts.reduce(
    (sum, { on, amount }) => (Temporal.PlainDate.compare(on, day) > 0 ? sum : sum + amount),
    0n,
  );
}

/** How much of each part is still owed where so much is in all: the first is paid first, and bears what came on top. */
export function stillOwed(owed: bigint, parts: readonly DuePart[]): DuePart[] {
  let left = owed;
  const fromLast = parts.toReversed().map(({ on, amount }, index) => {
    const part = index === parts.length - 1 || left < amount ? left : amount;
    left -= part;
    return { on, amount: part };
  });
  return fromLast.reverse();
}
