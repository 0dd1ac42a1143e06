// What a cancellation would leave to pay, shown before anybody says it.

import type { Temporal } from '@colla/calendar';
import type { Reason, Standing, Who } from '@colla/hours';
import { type Facts, type Statement, statement, type Terms } from '@colla/rates';

/** Word that a call, or everything not begun yet, will not take place; without an instant, nobody came. */
export interface Word {
  /** One call by its id; all that can still fall where left out. */
  readonly call?: string;
  readonly at?: Temporal.ZonedDateTime;
  readonly by: Who;
  readonly reason: Reason;
}

export interface Fall {
  /** The statements without and with the word. */
  readonly before: Statement;
  readonly after: Statement;
  /** The statement with the word, as if the fallen calls had never been asked for. */
  readonly withoutThem: Statement;
  /** What the fallen calls alone leave to pay, tax with it: minor units. */
  readonly cost: bigint;
  /** How the fallen calls were judged, in words: “cancelled 30 h before the exam”. */
  readonly why: readonly string[];
  /** The clauses that judged them. */
  readonly clauses: readonly string[];
}

/** What the engagement comes to before and after the word. Pure; nothing is kept. */
export function fallOf(facts: Facts, terms: Terms, word: Word, asOf: Temporal.ZonedDateTime): Fall {
  const fallen = new Set(facts.calls.filter((call) => falls(call, word)).map(({ id }) => id));
  const calls = facts.calls.map((call) =>
    fallen.has(call.id) ? { ...call, standing: standingAfter(word, call.standing.is === 'agreed') } : call,
  );
  const after = statement({ ...facts, calls }, terms, asOf);
  const kept = facts.calls.filter(({ id }) => !fallen.has(id));
  const withoutThem = statement({ ...facts, calls: kept }, terms, asOf);
  const judged = after.fallen.filter(({ call }) => fallen.has(call));
  const once = (words: readonly string[]) => [...new Set(words)];
  return {
    before: statement(facts, terms, asOf),
    after,
    withoutThem,
    cost: after.total - withoutThem.total,
    why: once(judged.map(({ why }) => why)),
    clauses: once(judged.map(({ clause }) => clause)),
  };
}

function falls(call: Facts['calls'][number], { call: id, at }: Word): boolean {
  if (id !== undefined) return call.id === id;
  const stands = call.standing.is === 'agreed' || call.standing.is === 'held';
  return stands && (at === undefined || call.planned.start.epochMilliseconds > at.epochMilliseconds);
}

function standingAfter({ at, by, reason }: Word, wasAgreed: boolean): Standing {
  return at ? { is: 'cancelled', at, by, reason, wasAgreed } : { is: 'missed', by, reason };
}
