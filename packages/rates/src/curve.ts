// What cancelling costs, against time: a step chart that changes only where some notice runs out or a call begins.

import { Temporal } from '@colla/calendar';
import type { Facts } from './facts.ts';
import { turnsOf } from './kinds.ts';
import { type Terms, totalsIfCancelled } from './statement.ts';
import type { Tariff } from './tariff.ts';

/** From this instant until the next step, cancelling everything agreed leaves so much to pay, in minor units. */
export interface CurveStep {
  readonly from: Temporal.ZonedDateTime;
  /** True where it begins just after a limit: word at exactly the limit, a millisecond earlier, is of the step before. */
  readonly after: boolean;
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
  const within = ({ from: at }: Turn) =>
    at.epochMilliseconds > from.epochMilliseconds && at.epochMilliseconds <= until.epochMilliseconds;
  const all = [{ from, after: false }, ...turns(facts, terms.tariff).filter(within)];
  const instants = all.map(({ from }) => from);
  const totals = totalsIfCancelled(facts, terms, instants);
  return all
    .map((turn, index) => ({ ...turn, total: totals[index] ?? 0n }))
    .filter(({ total }, index) => index === 0 || total !== totals[index - 1]);
}

/** What cancelling costs at an instant of the curve. */
export function costAt(curve: readonly CurveStep[], at: Temporal.ZonedDateTime): bigint | undefined {
  return curve.findLast(({ from }) => from.epochMilliseconds <= at.epochMilliseconds)?.total;
}

type Turn = Omit<CurveStep, 'total'>;

/**
 * The instants at which the cost can change, in order, and each a millisecond later: word at exactly the limit may
 * fall on either side. What was cancelled before counts too, since calls that fall by one word fall together.
 */
function turns({ calls, holidays }: Facts, { clauses }: Tariff): Turn[] {
  const limits = calls.flatMap(({ planned, standing }) => [
    planned.start,
    ...(standing.is === 'cancelled' ? [standing.at] : []),
    ...clauses.flatMap((clause) => turnsOf(clause, planned.start, holidays)),
  ]);
  const after = limits.map((limit) => ({ from: limit.add({ milliseconds: 1 }), after: true }));
  const both = [...after, ...limits.map((from) => ({ from, after: false }))];
  const each = new Map(both.map((turn) => [turn.from.epochMilliseconds, turn]));
  return [...each.values()].sort((one, other) => Temporal.ZonedDateTime.compare(one.from, other.from));
}
