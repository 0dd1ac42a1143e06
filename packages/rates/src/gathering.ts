// What may be taken together for each day, week, month or term: what a whole month is paid has no part for one day.

import { Refusal } from '@colla/refusal';
import { eachOf, gathers, kindOf, namesOf, rivalryOf } from './kinds.ts';
import { EACH, sayEach } from './occasion.ts';
import type { Clause } from './tariff.ts';

/** A clause that takes together, for an occasion, what another charges for a longer one. */
export function gathersLonger(clauses: readonly Clause[]): Refusal | undefined {
  for (const [index, clause] of clauses.entries()) {
    if (!gathers(clause)) continue;
    const each = eachOf(clause);
    const longer = gatheredBy(clause, clauses).find((one) => isLonger(one, clause));
    if (!longer) continue;
    return new Refusal(
      'rates/contradiction',
      `Clause “${clause.id}” is reckoned for each ${each}, and “${longer.id}” charges ${sayEach(eachOf(longer))}: that is no part of one ${each}. Let “${clause.id}” be for as long, or name other clauses in it.`,
      { clause: clause.id, other: longer.id },
      `/clauses/${index}/terms`,
    );
  }
  return undefined;
}

/** What it names, or else what puts a price on calls. */
function gatheredBy(clause: Clause, clauses: readonly Clause[]): Clause[] {
  const names = namesOf(clause);
  return clauses.filter((one) => (names.length > 0 ? names.includes(one.id) : rivalryOf(one) === 'price'));
}

/** Journeys and costs have days of their own, whatever they are weighed for. */
function isLonger(one: Clause, other: Clause): boolean {
  return !kindOf(one).phases.travel && EACH.indexOf(eachOf(one)) > EACH.indexOf(eachOf(other));
}
