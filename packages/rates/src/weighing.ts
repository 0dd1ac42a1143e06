// What may be weighed against what, where only one of some ways of charging holds.

import { Refusal } from '@colla/refusal';
import type { Phase } from './kind.ts';
import { eachOf, kindOf, waysOf } from './kinds.ts';
import { type Each, liesIn, sayEach } from './occasion.ts';
import type { Clause } from './tariff.ts';

/** A way of charging that charges nothing, or for longer than it is weighed for. */
export function notToBeWeighed(clauses: readonly Clause[]): Refusal | undefined {
  for (const [index, clause] of clauses.entries()) {
    const ways = waysOf(clause);
    const named = clauses.filter(({ id }) => ways?.ways.some((ids) => ids.includes(id)));
    for (const one of named) {
      const why = whyNotWeighed(one, ways?.each ?? 'engagement');
      if (why === undefined) continue;
      return new Refusal(
        'rates/contradiction',
        `Clause “${clause.id}” cannot weigh “${one.id}”: ${why}`,
        { clause: clause.id, one: one.id },
        `/clauses/${index}/terms/ways`,
      );
    }
  }
  return undefined;
}

const CHARGING: readonly Phase[] = [
  'coverage',
  'rates',
  'supplements',
  'discounts',
  'cancellation',
  'limits',
  'travel',
];

function whyNotWeighed(one: Clause, each: Each): string | undefined {
  const { phases, title } = kindOf(one);
  if (!CHARGING.some((phase) => phases[phase]))
    return `it is a clause of the kind “${title}” and charges nothing. Name clauses that charge.`;
  const own = eachOf(one);
  if (!liesIn(own, each))
    return `it charges ${sayEach(own)}, and that is no part of one ${each}. Weigh them for the engagement.`;
  if (rollsOver(one) && each !== 'engagement')
    return `what it leaves of one ${own} serves the next, and that is for no one ${each}. Weigh them for the engagement.`;
  // What is charged without a call belongs to its own occasion, and to no longer one.
  return runsThrough(one) && each !== 'engagement' && each !== own
    ? `it charges ${sayEach(own)} also where there is none, and that is for no one ${each}. Weigh them for each ${own}, or for the engagement.`
    : undefined;
}

function runsThrough({ terms }: Clause): boolean {
  return 'through' in terms && terms.through;
}

function rollsOver({ terms }: Clause): boolean {
  return 'rollsOver' in terms && terms.rollsOver;
}

/** A clause of which two others say whether it holds. */
export function weighedTwice(clauses: readonly Clause[]): Refusal | undefined {
  const weighing = new Map<string, string>();
  for (const [index, clause] of clauses.entries()) {
    const { id } = clause;
    for (const name of waysOf(clause)?.ways.flat() ?? []) {
      const other = weighing.get(name);
      if (other !== undefined)
        return new Refusal(
          'rates/contradiction',
          `Clauses “${other}” and “${id}” contradict: both say whether “${name}” holds. Name it in one of them only.`,
          { one: other, other: id },
          `/clauses/${index}`,
        );
      weighing.set(name, id);
    }
  }
  return undefined;
}

/** Whether only one of the two ever holds: they are different ways of charging, of which one is kept. */
export function areAlternatives(clauses: readonly Clause[]): (one: Clause, other: Clause) => boolean {
  const choices = clauses.flatMap((clause) => waysOf(clause) ?? []);
  const wayIn = (id: string, ways: readonly (readonly string[])[]) =>
    ways.findIndex((ids) => ids.includes(id));
  return (one, other) =>
    choices.some(({ ways }) => {
      const [way, another] = [wayIn(one.id, ways), wayIn(other.id, ways)];
      return way >= 0 && another >= 0 && way !== another;
    });
}
