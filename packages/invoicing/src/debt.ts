// What each payer has to pay by which day, by the payment clause of an agreement and by invoices.

import { isAfter, Temporal } from '@colla/calendar';
import { type Agreed, factsOf, type House, statementUnder } from '@colla/engagements';
import type { Call } from '@colla/hours';
import { dueOn, type EventDay, type PaymentDue, type Statement } from '@colla/rates';
import type { HeldDeposit } from './deposit.ts';
import { type DuePart, dueBy, duePartsOf } from './due-parts.ts';
import type { Invoice } from './invoice.ts';

/** An invoice and what was paid on it, in minor units. */
export interface Paid {
  readonly invoice: Pick<Invoice, 'payer' | 'total' | 'issuedOn' | 'dueOn'>;
  readonly paid: bigint;
}

/** What came in for an engagement: on its invoices, and as deposits that are held. */
interface CameIn {
  readonly invoices: readonly Paid[];
  readonly deposits: readonly HeldDeposit[];
}

/** What one payer has to pay by which day, by the clause and by invoices; never more than `most`. */
export interface Debt {
  readonly parts: readonly DuePart[];
  readonly invoiced: readonly DuePart[];
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

/**
 * The debts of an engagement, payer by payer. A deposit that is held lessens what there is to pay in the end where it
 * counts towards the final invoice, and is as good as paid where it counts towards the next.
 */
export function debtsOf(of: DebtFacts, { invoices, deposits }: CameIn): Debt[] {
  const { engagement, house, asItStands, payment } = of;
  const planned = plannedOf(of);
  const facts = factsOf(engagement, house, engagement.agreement);
  const held = heldOf(engagement.id, deposits);
  return asItStands.payers.map(({ payer, total }) => {
    const own = invoices.filter(({ invoice }) => invoice.payer === payer);
    const paid = own.reduce((sum, { paid }) => sum + paid, 0n);
    const deposit = take(held, engagement.payers[payer], total - paid);
    const counts = asItStands.deposit?.counts;
    return {
      parts: planned ? partsOf(payer, planned) : [],
      invoiced: own.flatMap(({ invoice }) => duePartsOf(invoice, { payment, facts })),
      most: counts === 'the final invoice' ? total - deposit : total,
      received: counts === 'the next invoice' ? paid + deposit : paid,
    };
  });
}

/** What is held for an engagement, by party. */
function heldOf(engagement: string, deposits: readonly HeldDeposit[]): Map<string, bigint> {
  const held = new Map<string, bigint>();
  for (const of of deposits)
    if (of.engagement === engagement) held.set(of.party, (held.get(of.party) ?? 0n) + of.amount);
  return held;
}

/** Takes of what a party has there as much as one of its roles owes: who pays in two roles has one deposit. */
function take(held: Map<string, bigint>, party: string | undefined, owed: bigint): bigint {
  const there = (party !== undefined && held.get(party)) || 0n;
  const taken = greatest(0n, least(there, owed));
  if (party !== undefined) held.set(party, there - taken);
  return taken;
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
function partsOf(payer: string, { asPlanned, dayOf }: Planned): DuePart[] {
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

function least(one: bigint, other: bigint): bigint {
  return one < other ? one : other;
}

function greatest(one: bigint, other: bigint): bigint {
  return one > other ? one : other;
}
