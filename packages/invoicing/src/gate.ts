// Not paid, not played: the calls that wait until what is owed by then has been received.

import { Temporal } from '@colla/calendar';
import { type Agreed, type House, statementUnder } from '@colla/engagements';
import { type Currency, toDecimal } from '@colla/money';
import { type OrRefusal, Refusal } from '@colla/refusal';
import { daysOf, debtsOf, owedBy, type Paid } from './debt.ts';
import type { HeldDeposit } from './deposit.ts';

/** What a block is read off: an agreed engagement, every invoice of it, and what is fixed outside it. */
export interface Gated {
  readonly engagement: Agreed;
  readonly invoices: readonly Paid[];
  /** What is held of its deposit; nothing where it is left out. */
  readonly deposits?: readonly HeldDeposit[];
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
 * more that was played, or a fare paid since, is not owed before the next call. What is held as a deposit counts
 * towards what the agreement says.
 */
export function blockOf(
  { engagement, invoices, deposits = [], house }: Gated,
  now: Temporal.ZonedDateTime,
): Block | undefined {
  const waiting = engagement.calls.filter(({ standing, lifted }) => standing.is === 'agreed' && !lifted);
  const asItStands =
    waiting.length > 0 ? statementUnder(engagement, engagement.agreement, now, house) : undefined;
  if (!asItStands?.payment?.gate) return undefined;
  const { payment, currency } = asItStands;
  const today = now.toPlainDate();
  const debts = debtsOf({ engagement, house, asItStands, payment }, { invoices, deposits });
  const since = daysOf(debts).find((day) => isBy(day, today) && owedBy(day, debts) > 0n);
  const calls = waiting.filter(({ planned }) => since && isBy(since, planned.start.toPlainDate()));
  if (!since || calls.length === 0) return undefined;
  const said = engagement.agreement.sentences.find(({ clause }) => clause === payment.clause);
  return {
    clause: payment.clause,
    sentence: said?.sentence ?? '',
    due: since,
    owed: owedBy(today, debts),
    currency,
    calls: calls.map(({ id }) => id),
  };
}

function isBy(one: Temporal.PlainDate, other: Temporal.PlainDate): boolean {
  return Temporal.PlainDate.compare(one, other) <= 0;
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
    'Nothing is owed before this call today, or its block was lifted already. Leave it as it is: it may be played.',
    { call },
  );
}
