// Not paid, not played: the calls that wait until what is owed by then has been received.

import { Temporal } from '@colla/calendar';
import { type Agreed, factsOf, type House, statementUnder } from '@colla/engagements';
import type { Call } from '@colla/hours';
import { type Currency, toDecimal } from '@colla/money';
import { dueOn, type PaymentDue, type Statement } from '@colla/rates';
import { type OrRefusal, Refusal } from '@colla/refusal';
import type { Invoice } from './invoice.ts';

/** An invoice and what was paid on it, in minor units. */
interface Paid {
  readonly invoice: Pick<Invoice, 'payer' | 'total' | 'dueOn'>;
  readonly paid: bigint;
}

/** What a block is read off: an agreed engagement, every invoice of it, and what is fixed outside it. */
export interface Gated {
  readonly engagement: Agreed;
  readonly invoices: readonly Paid[];
  readonly house: House;
}

/** Calls that are not played yet, by a clause of the agreement. `owed` is in minor units of the engagement's currency. */
export interface Block {
  readonly clause: string;
  readonly sentence: string;
  /** The day since which something is owed. */
  readonly due: Temporal.PlainDate;
  readonly owed: bigint;
  readonly currency: Currency;
  readonly calls: readonly string[];
}

/**
 * The block under which agreed calls stand at `now`; undefined where there is none. From the day on which something is
 * due and not received, invoiced or not, a call of that day or later waits, unless its block was lifted. What is due is
 * what the engagement comes to with every call as it was planned, and no more than it comes to as it stands: an hour
 * more that was played, or a fare paid since, is not owed before the next call.
 */
export function blockOf(
  { engagement, invoices, house }: Gated,
  now: Temporal.ZonedDateTime,
): Block | undefined {
  const waiting = engagement.calls.filter(({ standing, lifted }) => standing.is === 'agreed' && !lifted);
  const asItStands =
    waiting.length > 0 ? statementUnder(engagement, engagement.agreement, now, house) : undefined;
  if (!asItStands?.payment?.gate) return undefined;
  const { payment, currency } = asItStands;
  const debts = debtsOf({ asItStands, ...planned({ engagement, payment, house }, now) }, invoices);
  const since = daysOf(debts).find((day) => !isAfter(day, now.toPlainDate()) && owedBy(day, debts) > 0n);
  const calls = waiting.filter(({ planned }) => since && !isAfter(since, planned.start.toPlainDate()));
  if (!since || calls.length === 0) return undefined;
  const said = engagement.agreement.sentences.find(({ clause }) => clause === payment.clause);
  return {
    clause: payment.clause,
    sentence: said?.sentence ?? '',
    due: since,
    owed: owedBy(now.toPlainDate(), debts),
    currency,
    calls: calls.map(({ id }) => id),
  };
}

/** What is due without an invoice: the statement with every call as planned and nothing spent later, and its day. */
interface Planned {
  readonly asPlanned: Statement;
  /** None where only an invoice makes it due. */
  readonly dueOn: Temporal.PlainDate | undefined;
}

function planned(
  { engagement, payment, house }: Pick<Gated, 'engagement' | 'house'> & { payment: PaymentDue },
  now: Temporal.ZonedDateTime,
): Planned {
  const { agreement } = engagement;
  const due = dueOn(payment.due, factsOf(engagement, house, agreement));
  const calls = engagement.calls.map(unplayed);
  const costs = engagement.costs.filter(({ on }) => due && !isAfter(on, due));
  return { asPlanned: statementUnder({ ...engagement, calls, costs }, agreement, now, house), dueOn: due };
}

function unplayed(call: Call): Call {
  return call.standing.is === 'played' ? { ...call, standing: { is: 'agreed' } } : call;
}

/** So much by a day, in minor units. */
interface Part {
  readonly on: Temporal.PlainDate;
  readonly amount: bigint;
}

/** What one payer has to pay by which day, by the clause and by invoices; never more than `most`. */
interface Debt {
  readonly parts: readonly Part[];
  readonly invoiced: readonly Part[];
  readonly most: bigint;
  readonly received: bigint;
}

function debtsOf(of: Planned & { asItStands: Statement }, invoices: readonly Paid[]): Debt[] {
  return of.asItStands.payers.map(({ payer, total }) => {
    const own = invoices.filter(({ invoice }) => invoice.payer === payer);
    return {
      parts: partsOf(payer, of),
      invoiced: own.map(({ invoice }) => ({ on: invoice.dueOn, amount: invoice.total })),
      most: total,
      received: own.reduce((sum, { paid }) => sum + paid, 0n),
    };
  });
}

/** All at once, or month by month where the clause says so. */
function partsOf(payer: string, { asPlanned, dueOn }: Planned): Part[] {
  if (!dueOn) return [];
  const monthly = asPlanned.payment?.instalments.filter((part) => part.payer === payer) ?? [];
  if (monthly.length > 0)
    return monthly.map(({ month, amount }) => ({ on: dueOn.add({ months: month }), amount }));
  const whole = asPlanned.payers.find((sum) => sum.payer === payer);
  return whole ? [{ on: dueOn, amount: whole.total }] : [];
}

function daysOf(debts: readonly Debt[]): Temporal.PlainDate[] {
  return debts
    .flatMap(({ parts, invoiced }) => [...parts, ...invoiced].map(({ on }) => on))
    .sort(Temporal.PlainDate.compare);
}

/** What is due by a day and not received. What one payer paid too much lessens no other's debt. */
function owedBy(day: Temporal.PlainDate, debts: readonly Debt[]): bigint {
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

/** Whether a call may be played; the refusal where it is blocked. */
export function mayPlay(block: Block | undefined, call: string): OrRefusal<true> {
  if (!block?.calls.includes(call)) return true;
  const { clause, due } = block;
  const owed = toDecimal(block.owed, block.currency);
  return new Refusal(
    'invoicing/not-paid',
    `${owed} is owed since ${due} and not received, and what is not paid by then is not played. Invoice it and enter the payment, or lift the block with a reason.`,
    { clause, due: due.toString(), owed },
  );
}

/** Whether the block of a call may be lifted; the refusal where it stands under none. */
export function mayLift(block: Block | undefined, call: string): OrRefusal<true> {
  if (block?.calls.includes(call)) return true;
  return new Refusal(
    'invoicing/not-blocked',
    'Nothing is owed before this call today, or its block was lifted already. There is nothing to lift.',
    { call },
  );
}
