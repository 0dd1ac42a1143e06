// Two ways of charging, of which the lower or the higher holds: each is reckoned without the others, and one is kept.

import type { Desk } from './desk.ts';
import { type Figure, figuresOf } from './figures.ts';
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
  /** The clauses that charge what is told (journeys, costs): where nothing is, they make no way of charging. */
  readonly ofWhatIsTold: ReadonlySet<string>;
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
  const figureOf = choice.ways.map((ids, way) => figuresOf(desks[way] ?? desk, ids, choice));
  const held = new Map<string | undefined, Held>();
  return holding(choice, (call) => {
    const about = aboutOf(call);
    const known = held.get(about);
    if (known) return known;
    const figures = figureOf.map((of) => of(about));
    const better = best(choice, figures, desk.voice);
    held.set(about, better);
    return better;
  });
}

/** The way that counts and comes to least, or to most; of two alike the one named first. */
function best(choice: Choice, figures: readonly Figure[], voice: Voice): Held {
  const counting = waysThatCount(figures);
  const better = (one: bigint, other: bigint) => (choice.keep === 'lower' ? one < other : one > other);
  const sumOf = (way: number) => figures[way]?.sum ?? 0n;
  const way = counting.reduce((kept, other) => (better(sumOf(other), sumOf(kept)) ? other : kept));
  return { way, why: [{ name: `the ${choice.keep} of`, value: sayFigures(choice, figures, voice) }] };
}

/** Those that leave the fewest calls without a price; of these those of which something is told, where there are any. */
function waysThatCount(figures: readonly Figure[]): number[] {
  const fewest = Math.min(...figures.map(({ gaps }) => gaps));
  const complete = [...figures.keys()].filter((way) => figures[way]?.gaps === fewest);
  const told = complete.filter((way) => figures[way]?.isTold);
  return told.length > 0 ? told : complete;
}

/** “120.00 with “hours” and 150.00 with “day””, “24.00 with “way”; nothing is told of “fare””. */
function sayFigures({ ways }: Choice, figures: readonly Figure[], voice: Voice): string {
  const told = ways.flatMap((ids, way) => {
    const figure = figures[way];
    return figure?.isTold ? [`${voice.money(figure.sum)} ${sayWay(ids, voice)}`] : [];
  });
  const untold = ways.filter((_, way) => !figures[way]?.isTold).map((ids) => sayNames(ids, voice));
  const parts = [
    ...(told.length > 0 ? [voice.list(told)] : []),
    ...(untold.length > 0 ? [`nothing is told of ${voice.list(untold)}`] : []),
  ];
  return parts.join('; ');
}

/** “with “hours” and “evening””, or “without” them. */
export function sayWay(ids: readonly string[], voice: Voice): string {
  return ids.length === 0 ? 'without' : `with ${sayNames(ids, voice)}`;
}

function sayNames(ids: readonly string[], voice: Voice): string {
  return voice.list(ids.map((id) => `“${id}”`));
}
