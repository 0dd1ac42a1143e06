// Two ways of charging, of which the lower or the higher holds: each is reckoned without the others, and one is kept.

import type { Call } from '@colla/hours';
import type { Desk } from './desk.ts';
import { fitsEngagement } from './fit.ts';
import type { ClauseHead } from './kind.ts';
import type { UsedFact } from './line.ts';
import { type Each, occasionOf } from './occasion.ts';
import type { Voice } from './voice.ts';

/** Some ways of charging, each by the clauses that are charged in it alone; one may have none. */
export interface Ways {
  readonly keep: 'lower' | 'higher';
  readonly each: Each;
  readonly ways: readonly (readonly string[])[];
}

/** Ways to weigh, the clause that says so, and the clauses that charge for no longer than what is weighed. */
export interface Choice extends Ways {
  readonly clause: ClauseHead;
  readonly weighs: ReadonlySet<string>;
}

/** What was chosen: which clauses are left out where, and the figures that speak for those that hold. */
export interface Chosen {
  /** Whether a clause is left out for a call, or altogether where no call is given. */
  readonly leavesOut: (clause: string, call?: string) => boolean;
  readonly because: (clause: string, call?: string) => readonly UsedFact[];
}

/** What is chosen where there is nothing to choose. */
const NOTHING_TO_CHOOSE: Chosen = { leavesOut: () => false, because: () => NO_FACTS };
const NO_FACTS: readonly UsedFact[] = [];

/** A way that holds somewhere, and why. */
interface Held {
  readonly way: number;
  readonly why: readonly UsedFact[];
}

/** Weighs one choice after another; `trial` works a statement out under what is chosen so far, up to who pays. */
export function choose(choices: readonly Choice[], trial: (chosen: Chosen) => Desk): Chosen {
  let chosen = NOTHING_TO_CHOOSE;
  for (const [index, choice] of choices.entries()) {
    const unweighed = choices.slice(index + 1).map((later) => holding(later, () => ({ way: 0, why: [] })));
    const desks = choice.ways.map((_, way) =>
      trial(together([chosen, holding(choice, () => ({ way, why: [] })), ...unweighed])),
    );
    chosen = together([chosen, weighed(choice, desks)]);
  }
  return chosen;
}

function together(parts: readonly Chosen[]): Chosen {
  return {
    leavesOut: (clause, call) => parts.some((part) => part.leavesOut(clause, call)),
    because: (clause, call) => parts.flatMap((part) => part.because(clause, call)),
  };
}

/** One choice, as it came out: `heldAt` says which way holds for a call, or for the engagement where none is given. */
function holding({ ways, each }: Ways, heldAt: (call: string | undefined) => Held): Chosen {
  const wayOf = new Map(ways.flatMap((ids, way) => ids.map((id) => [id, way] as const)));
  return {
    leavesOut: (clause, call) => {
      const way = wayOf.get(clause);
      if (way === undefined || (call === undefined && each !== 'engagement')) return false;
      return heldAt(call).way !== way;
    },
    because: (clause, call) => (wayOf.has(clause) ? heldAt(call).why : []),
  };
}

/** Where a choice is not for this engagement, the way named first holds. */
function weighed(choice: Choice, desks: readonly Desk[]): Chosen {
  const [desk] = desks;
  if (!desk || !fitsEngagement(choice.clause.for, desk.facts))
    return holding(choice, () => ({ way: 0, why: [] }));
  const calls = new Map(desk.items.map(({ call }) => [call.id, call]));
  const aboutOf = (call: string | undefined) => occasionOf(calls.get(call ?? ''), choice.each, desk.facts);
  const found = desks.map((desk) => figuresOf(desk, choice));
  const held = new Map<string | undefined, Held>();
  return holding(choice, (call) => {
    const about = aboutOf(call);
    const known = held.get(about);
    if (known) return known;
    const better = best(
      choice,
      found.map((figures) => figures.get(about) ?? NO_FIGURE),
      desk,
    );
    held.set(about, better);
    return better;
  });
}

/** What one occasion comes to in a way, and how many of its calls are left without a price. */
interface Figure {
  readonly sum: bigint;
  readonly gaps: number;
}

const NO_FIGURE: Figure = { sum: 0n, gaps: 0 };

function figuresOf(desk: Desk, { each, weighs }: Choice): Map<string | undefined, Figure> {
  const figures = new Map<string | undefined, Figure>();
  const add = (call: Call | undefined, { sum, gaps }: Figure) => {
    const about = occasionOf(call, each, desk.facts);
    const before = figures.get(about) ?? NO_FIGURE;
    figures.set(about, { sum: before.sum + sum, gaps: before.gaps + gaps });
  };
  for (const { clause, calls, amount } of desk.lines)
    if (weighs.has(clause)) add(desk.item(calls[0])?.call, { sum: amount, gaps: 0 });
  for (const item of desk.items) if (desk.isGap(item)) add(item.call, { sum: 0n, gaps: 1 });
  return figures;
}

/** Of those that leave the fewest calls without a price the lowest or highest; of two alike the one named first. */
function best({ keep, ways }: Choice, figures: readonly Figure[], { voice }: Desk): Held {
  const fewest = Math.min(...figures.map(({ gaps }) => gaps));
  const better = (one: Figure, other: Figure) =>
    keep === 'lower' ? one.sum < other.sum : one.sum > other.sum;
  let way = -1;
  for (const [index, figure] of figures.entries()) {
    const kept = figures[way];
    if (figure.gaps === fewest && (!kept || better(figure, kept))) way = index;
  }
  const said = ways.map((ids, index) => `${voice.money(figures[index]?.sum ?? 0n)} ${sayWay(ids, voice)}`);
  return { way, why: [{ name: `the ${keep} of`, value: voice.list(said) }] };
}

/** “with “hours” and “evening””, or “without” them. */
export function sayWay(ids: readonly string[], voice: Voice): string {
  return ids.length === 0 ? 'without' : `with ${voice.list(ids.map((id) => `“${id}”`))}`;
}
