// The order in which a tariff's clauses do their work, worked out once for each tariff.

import type { Desk } from './desk.ts';
import { closer, fitsEngagement } from './fit.ts';
import { type ClauseHead, type Counting, PHASES, type Phase, type Rivalry } from './kind.ts';
import { countingOf, eachOf, excludes, kindOf, namesOf, rankOf, rivalryOf, waysOf } from './kinds.ts';
import { liesIn } from './occasion.ts';
import type { Clause, Tariff } from './tariff.ts';
import type { Choice } from './ways.ts';

interface Plan {
  readonly steps: readonly Step[];
  /** The steps before who pays and tax: by what they come to, ways of charging are weighed. */
  readonly weighing: readonly Step[];
  readonly rivals: Readonly<Record<Rivalry, readonly ClauseHead[]>>;
  /** How the clauses count that count otherwise than as played, by id. */
  readonly counting: ReadonlyMap<string, Counting>;
  /** Ways of charging of which only one holds. */
  readonly choices: readonly Choice[];
}

/** A tariff's clauses in the order of the phases, worked out once for each tariff. */
const plans = new WeakMap<Tariff, Plan>();

export function planOf(tariff: Tariff): Plan {
  const known = plans.get(tariff);
  if (known) return known;
  const byRank = tariff.clauses.toSorted((one, other) => rankOf(one) - rankOf(other));
  const byPhase = PHASES.flatMap((phase) => byRank.flatMap((clause) => stepOf(clause, phase, tariff)));
  const steps = afterThoseTheyName(byPhase);
  const plan: Plan = {
    steps,
    weighing: steps.filter(({ phase }) => PHASES.indexOf(phase) < PHASES.indexOf('split')),
    rivals: {
      price: rivalsOf(tariff, 'price'),
      fall: rivalsOf(tariff, 'fall'),
      absence: rivalsOf(tariff, 'absence'),
    },
    counting: countingsOf(tariff),
    choices: choicesOf(tariff),
  };
  plans.set(tariff, plan);
  return plan;
}

export interface Step {
  readonly clause: Clause;
  readonly phase: Phase;
  readonly work: (desk: Desk) => void;
}

/** Steps in the order of the phases, except that a clause waits for those it names. They never name in a circle. */
function afterThoseTheyName(steps: readonly Step[]): Step[] {
  const done: Step[] = [];
  let left = steps;
  while (left.length > 0) {
    const waits = new Set(left.map(({ clause }) => clause.id));
    const next = left.find(({ clause }) => !namesOf(clause).some((name) => waits.has(name)));
    if (!next) throw new Error('clauses name one another in a circle');
    done.push(next);
    left = left.filter((step) => step !== next);
  }
  return done;
}

function stepOf(clause: Clause, phase: Phase, { clauses }: Tariff): Step[] {
  const { phases } = kindOf(clause);
  const act = phases[phase];
  if (!act) return [];
  const closerOnes = clauses.filter((other) => excludes(other, clause) && closer(other.for, clause.for));
  const work = (desk: Desk) => {
    if (desk.leavesOut(clause.id)) return;
    if (closerOnes.some((other) => !desk.leavesOut(other.id) && fitsEngagement(other.for, desk.facts)))
      return;
    act(clause.terms, desk, clause);
  };
  return [{ clause, phase, work }];
}

/** The closer before the looser, so that the first that fits a call is the closest. */
function rivalsOf(tariff: Tariff, rivalry: Rivalry): ClauseHead[] {
  const rivals = tariff.clauses.filter((clause) => rivalryOf(clause) === rivalry);
  const closerThan = (clause: Clause) => rivals.filter((other) => closer(other.for, clause.for)).length;
  return rivals.toSorted((one, other) => closerThan(one) - closerThan(other));
}

function countingsOf({ clauses }: Tariff): Map<string, Counting> {
  return new Map(
    clauses.flatMap((clause) => {
      const counting = countingOf(clause);
      return counting ? [[clause.id, counting] as const] : [];
    }),
  );
}

function choicesOf({ clauses }: Tariff): Choice[] {
  return clauses.flatMap((clause) => {
    const ways = waysOf(clause);
    if (!ways) return [];
    const weighs = clauses.filter((other) => liesIn(eachOf(other), ways.each)).map(({ id }) => id);
    const ofWhatIsTold = clauses.filter((other) => kindOf(other).phases.travel).map(({ id }) => id);
    return [{ ...ways, clause, weighs: new Set(weighs), ofWhatIsTold: new Set(ofWhatIsTold) }];
  });
}
