// What each payer has to pay by which day, by the payment clause of an agreement and by invoices.

import { Temporal } from '@colla/calendar';
import { type Agreed, factsOf, type House, statementUnder } from '@colla/engagements';
import type { Call } from '@colla/hours';
import { dueOn, type EventDay, type PaymentDue, type Statement } from '@colla/rates';
import type { Invoice } from './invoice.ts';

/** An invoice and what was paid on it, in minor units. */
export interface Paid {
  readonly invoice: Pick<Invoice, 'payer' | 'total' | 'dueOn'>;
  readonly paid: bigint;
}

/** So much by a day, in minor units. */
interface Part {
  readonly on: Temporal.PlainDate;
  readonly amount: bigint;
}

/** What one payer has to pay by which day, by the clause and by invoices; never more than `most`. */
export interface Debt {
  readonly parts: readonly Part[];
  readonly invoiced: readonly Part[];
  readonly most: bigint;
  readonly received: bigint;
}

/** What debts are read off: the statement as it stands, and the clause by which it is due. */
interface DebtFacts {
  readonly engagement: Agreed;
  readonly house: House;
  readonly asItStands: Statement;
  readonly payment: PaymentDue;
}

/** The debts of an engagement, payer by payer. */
export function debtsOf(of: DebtFacts, invoices: readonly Paid[]): Debt[] {
  const planned = plannedOf(of);
  return of.asItStands.payers.map(({ payer, total }) => {
    const own = invoices.filter(({ invoice }) => invoice.payer === payer);
    return {
      parts: planned ? partsOf(payer, planned) : [],
      invoiced: own.map(({ invoice }) => ({ on: invoice.dueOn, amount: invoice.total })),
      most: total,
      received: own.reduce((sum, { paid }) => sum + paid, 0n),
    };
  });
}

/** What falls due without an invoice. */
interface Planned {
  readonly asPlanned: Statement;
  /** The day of some events; undefined where only an invoice, or nothing yet, makes it. */
  readonly dayOf: (due: readonly EventDay[]) => Temporal.PlainDate | undefined;
}

/** The statement with every call as it was planned and nothing spent later; none where only an invoice makes it due. */
function plannedOf({ engagement, house, asItStands: { asOf }, payment }: DebtFacts): Planned | undefined {
  const { agreement } = engagement;
  const facts = factsOf(engagement, house, agreement);
  const dayOf = (due: readonly EventDay[]) => dueOn(due, facts);
  const last = [payment.due, ...payment.instalments.flatMap(({ due }) => (due ? [due] : []))]
    .flatMap((due) => dayOf(due) ?? [])
    .sort(Temporal.PlainDate.compare)
    .at(-1);
  if (!last) return undefined;
  const calls = engagement.calls.map(unplayed);
  const costs = engagement.costs.filter(({ on }) => !isAfter(on, last));
  return { asPlanned: statementUnder({ ...engagement, calls, costs }, agreement, asOf, house), dayOf };
}

function unplayed(call: Call): Call {
  return call.standing.is === 'played' ? { ...call, standing: { is: 'agreed' } } : call;
}

/** All at once, month by month, or each part on the day of its own. */
function partsOf(payer: string, { asPlanned, dayOf }: Planned): Part[] {
  const { payment } = asPlanned;
  const first = payment && dayOf(payment.due);
  const theirs = payment?.instalments.filter((part) => part.payer === payer) ?? [];
  const whole = asPlanned.payers.find((sum) => sum.payer === payer)?.total ?? 0n;
  if (theirs.length === 0) return first ? [{ on: first, amount: whole }] : [];
  return theirs.flatMap(({ ordinal, due, amount }) => {
    const on = due ? dayOf(due) : first?.add({ months: ordinal - 1 });
    return on ? [{ on, amount }] : [];
  });
}

/** The days on which something falls due, in order. */
export function daysOf(debts: readonly Debt[]): Temporal.PlainDate[] {
  return debts
    .flatMap(({ parts, invoiced }) => [...parts, ...invoiced].map(({ on }) => on))
    .sort(Temporal.PlainDate.compare);
}

/** What is due by a day and not received, in minor units. What one payer paid too much lessens no other's debt. */
export function owedBy(day: Temporal.PlainDate, debts: readonly Debt[]): bigint {
  return debts.reduce((sum, { parts, invoiced, most, received }) => {
    const due = least(most, greatest(dueBy(day, parts), dueBy(day, invoiced)));
    return sum + greatest(0n, due - received);
  }, 0n);
}

function dueBy(day: Temporal.PlainDate, parts: readonly Part[]): bigint {
  return parts.reduce((sum, { on, amount }) => (isAfter(on, day) ? sum : sum + amount), 0n);
}

function least(one: bigint, other: bigint): bigint {
  return one < other ? one : other;
}

function greatest(one: bigint, other: bigint): bigint {
  return one > other ? one : other;
}

function isAfter(one: Temporal.PlainDate, other: Temporal.PlainDate): boolean {
  return Temporal.PlainDate.compare(one, other) > 0;
}
