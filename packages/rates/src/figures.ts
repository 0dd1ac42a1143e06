// What an engagement comes to in one of some ways of charging: for each call, day, week or month by which they are weighed.

import { apportion } from '@colla/money';
import type { Desk } from './desk.ts';
import { groupsOf } from './groups.ts';
import type { Line } from './line.ts';
import { type Each, occasionOf } from './occasion.ts';
import type { Choice } from './ways.ts';

/** What one occasion comes to in a way, how many of its calls are left without a price, and whether it is a way at all. */
export interface Figure {
  readonly sum: bigint;
  readonly gaps: number;
  /** False where it charges only what is told, and nothing is. */
  readonly isTold: boolean;
}

/** The figures of the way of these clauses, by the word that tells an occasion from others. */
export function figuresOf(
  desk: Desk,
  ids: readonly string[],
  { each, weighs, ofWhatIsTold }: Choice,
): (about: string | undefined) => Figure {
  const sums = new Map<string | undefined, bigint>();
  for (const line of desk.lines)
    if (weighs.has(line.clause))
      for (const [about, part] of byOccasion(line, each, desk))
        sums.set(about, (sums.get(about) ?? 0n) + part);
  const gaps = groupsOf(
    desk.items.filter((item) => desk.isGap(item)),
    ({ call }) => occasionOf(call, each, desk.facts),
  );
  const isTold =
    ids.length === 0 ||
    !ids.every((id) => ofWhatIsTold.has(id)) ||
    desk.lines.some(({ clause }) => ids.includes(clause));
  return (about) => ({ sum: sums.get(about) ?? 0n, gaps: gaps.get(about)?.length ?? 0, isTold });
}

/** What of a line is for which occasion. */
function byOccasion(line: Line, each: Each, desk: Desk): (readonly [string | undefined, bigint])[] {
  const { calls, amount } = line;
  const aboutOf = (call: string | undefined) => occasionOf(desk.item(call)?.call, each, desk.facts);
  if (each === 'engagement' || calls.length < 2) return [[aboutOf(calls[0]), amount]];
  const groups = groupsOf(calls, aboutOf);
  const worthOf = worthOfCalls(line, desk);
  const worth = [...groups.values()].map((these) => these.reduce((sum, call) => sum + worthOf(call), 0n));
  const parts = apportion(amount, worth);
  return [...groups.keys()].map((about, index) => [about, parts[index] ?? 0n] as const);
}

/** By what the calls of a line share in it: the minutes they drew, or what they cost before they fell. */
function worthOfCalls({ clause }: Line, desk: Desk): (call: string) => bigint {
  const drawn = desk.entitlements.find((entitlement) => entitlement.clause === clause);
  if (!drawn) return (call) => desk.item(call)?.feeBeforeFall ?? 0n;
  const minutes = new Map(drawn.draws.map(({ call, minutes }) => [call, BigInt(minutes)]));
  return (call) => minutes.get(call) ?? 0n;
}
