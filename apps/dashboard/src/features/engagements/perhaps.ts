// What a call that only comes about if something happens would add, said before it is agreed.

import type { Temporal } from '@colla/calendar';
import { type Facts, type Statement, statement, type Terms } from '@colla/rates';
import type { CallJson, EngagementJson } from '@colla/wire';

/** The statements with the call agreed and without it. */
export interface Perhaps {
  readonly withIt: Statement;
  readonly without: Statement;
}

export function ifAgreed(facts: Facts, terms: Terms, call: string, asOf: Temporal.ZonedDateTime): Perhaps {
  const others = facts.calls.filter(({ id }) => id !== call);
  const agreed = facts.calls.map((each) =>
    each.id === call ? { ...each, standing: { is: 'agreed' } as const } : each,
  );
  const made = (calls: Facts['calls']) => statement({ ...facts, calls }, terms, asOf);
  return { withIt: made(agreed), without: made(others) };
}

/** The calls kept free that have a condition. */
export function conditional({ calls }: Pick<EngagementJson, 'calls'>): CallJson[] {
  return calls.filter(({ standing }) => standing.is === 'held' && standing.onlyIf !== undefined);
}
