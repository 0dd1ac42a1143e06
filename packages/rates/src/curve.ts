// What cancelling costs, against time: a step chart that changes only where some notice runs out or a call begins.

import { Temporal } from '@colla/calendar';
import type { Facts } from './facts.ts';
import { turnsOf } from './kinds.ts';
import { type Terms, totalsIfCancelled } from './statement.ts';
import type { Tariff } from './tariff.ts';

/** From this instant until the next step, cancelling everything agreed leaves so much to pay, in minor units. */
export interface CurveStep {
  readonly from: Temporal.ZonedDateTime;
  readonly total: bigint;
}

/**
 * What would be owed in all if the payer cancelled everything agreed and not begun, at any instant from `from` to
 * `until`: the same totals that a statement at that instant says, to the millisecond. The first step begins at `from`.
 */
export function cancellationCurve(
  facts: Facts,
  terms: Terms,
  { from, until }: { from: Temporal.ZonedDateTime; until: Temporal.ZonedDateTime },
): CurveStep[] {
  const within = (at: Temporal.ZonedDateTime) =>
    at.epochMilliseconds > from.epochMilliseconds && at.epochMilliseconds <= until.epochMilliseconds;
  const instants = [from, ...turns(facts, terms.tariff).filter(within)];
  const totals = totalsIfCancelled(facts, terms, instants);
  return instants
    .map((from, index) => ({ from, total: totals[index] ?? 0n }))
    .filter(({ total }, index) => index === 0 || total !== totals[index - 1]);
}

/** What cancelling costs at an instant of the curve. */
export function costAt(curve: readonly CurveStep[], at: Temporal.ZonedDateTime): bigint | undefined {
  return curve.findLast(({ from }) => from.epochMilliseconds <= at.epochMilliseconds)?.total;
}

/**
 * The instants at which the cost can change, in order, and each a millisecond later: word at exactly the limit may
 * fall on either side. What was cancelled before counts too, since calls that fall by one word fall together.
 */
function turns({ calls, holidays }: Facts, { clauses }: Tariff): Temporal.ZonedDateTime[] {
  const limits = calls.flatMap(({ planned, standing }) => [
    planned.start,
    ...(standing.is === 'cancelled' ? [standing.at] : []),
    ...clauses.flatMap((clause) => turnsOf(clause, planned.start, holidays)),
  ]);
  const both = limits.flatMap((limit) => [limit, limit.add({ milliseconds: 1 })]);
  const each = new Map(both.map((at) => [at.epochMilliseconds, at]));
  return [...each.values()].sort(Temporal.ZonedDateTime.compare);
}
