// When an engagement is invoiced: how much of its statement may be asked for on a day. What is asked for then is found
// by difference as always.

import { Temporal } from '@colla/calendar';
import type { Engagement } from '@colla/engagements';
import { divideRounded } from '@colla/money';
import type { Line, Statement, TaxSum } from '@colla/rates';
import type { Asked } from './billable.ts';
import { doneOn } from './earned.ts';

export const BILLING_PLANS = [
  'on agreement',
  'deposit then balance',
  'after each call',
  'monthly',
  'at the end',
] as const;
export type BillingPlan = (typeof BILLING_PLANS)[number];

/** What a plan is asked about. `earlier` is what was asked for before, `on` the day on which one would invoice. */
export interface Planned {
  readonly plan: BillingPlan;
  readonly engagement: Engagement;
  readonly statement: Statement;
  readonly earlier: readonly Asked[];
  readonly on: Temporal.PlainDate;
}

/**
 * The part of a statement that may be asked for on a day. On agreement all of it; after each call what is done; monthly
 * what was done by the end of the month before; at the end, and as the balance of a deposit, all of it once no call is
 * ahead. A line asked for before stays in, so that it is taken back only where the statement says so. Tax is in
 * proportion, and the last part has the rest of it.
 */
export function invoiceable(of: Planned): Statement {
  const lines = of.statement.lines.filter((line) => isInvoiceable(line, of));
  if (lines.length === of.statement.lines.length) return of.statement;
  const taxes = of.statement.taxes.map((tax) => taxOn(tax, lines));
  return { ...of.statement, lines, taxes, ...summed(of.statement, lines, taxes) };
}

function isInvoiceable(line: Line, of: Planned): boolean {
  const { plan, engagement, statement, earlier, on } = of;
  if (plan === 'on agreement' || earlier.some(({ lines }) => lines.some(({ key }) => key === line.key)))
    return true;
  if (plan === 'at the end' || plan === 'deposit then balance') return isDone(engagement);
  const day = doneOn(line, engagement.calls, statement.asOf);
  const until = plan === 'monthly' ? on.with({ day: 1 }).subtract({ days: 1 }) : on;
  return day !== undefined && Temporal.PlainDate.compare(day, until) <= 0;
}

/** Whether no agreed call is ahead. */
function isDone({ calls }: Engagement): boolean {
  return calls.every(({ standing }) => standing.is !== 'agreed');
}

/** A tax on some of the lines it is on: in proportion to them, rounded once. Where they cancel out, all of it. */
function taxOn(tax: TaxSum, lines: readonly Line[]): TaxSum {
  const asked = new Set(lines.map(({ key }) => key));
  const on = tax.on.filter(({ key }) => asked.has(key));
  const [part, whole] = [sum(on), sum(tax.on)];
  if (whole === 0n) return tax;
  const amount = inProportion(tax.amount, part, whole);
  return { ...tax, on, amount, base: tax.inside ? part - amount : inProportion(tax.base, part, whole) };
}

function inProportion(amount: bigint, part: bigint, whole: bigint): bigint {
  return whole < 0n ? divideRounded(-amount * part, -whole) : divideRounded(amount * part, whole);
}

/** The sums of a part of a statement: by payer, and in all. */
function summed(
  { payers }: Statement,
  lines: readonly Line[],
  taxes: readonly TaxSum[],
): Pick<Statement, 'payers' | 'net' | 'tax' | 'total'> {
  const parts = payers.map(({ payer }) => {
    const theirs = taxes.filter((tax) => tax.payer === payer);
    const tax = sum(theirs);
    const total =
      sum(lines.filter((line) => line.payer === payer)) + sum(theirs.filter(({ inside }) => !inside));
    return { payer, net: total - tax, tax, total };
  });
  const all = (part: 'net' | 'tax' | 'total') => parts.reduce((so, of) => so + of[part], 0n);
  return { payers: parts, net: all('net'), tax: all('tax'), total: all('total') };
}

function sum(all: readonly { readonly amount: bigint }[]): bigint {
  return all.reduce((so, { amount }) => so + amount, 0n);
}
