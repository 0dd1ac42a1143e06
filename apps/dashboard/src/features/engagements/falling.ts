// What a cancellation would leave to pay, shown before anybody says it.

import type { Temporal } from '@colla/calendar';
import type { Reason, Standing, Who } from '@colla/hours';
import { type Facts, type Line, type Statement, statement, type Terms } from '@colla/rates';

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
  /** What the lines for fallen calls alone come to, before tax that is added: minor units, below nought where taken off. */
  readonly cost: bigint;
  /** Those lines, of the statement with the word. */
  readonly own: readonly Line[];
  /** Lines for them and for calls that still stand, such as a package. */
  readonly shared: readonly Line[];
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
  const judged = after.fallen.filter(({ call }) => fallen.has(call));
  const once = (words: readonly string[]) => [...new Set(words)];
  return {
    before: statement(facts, terms, asOf),
    after,
    ...linesOf(after, fallen, new Set(calls.filter(hasFallen).map(({ id }) => id))),
    why: once(judged.map(({ why }) => why)),
    clauses: once(judged.map(({ clause }) => clause)),
  };
}

/** The lines about calls that fall now: their own, though calls that fell before share them; and those of others too. */
function linesOf({ lines }: Statement, now: ReadonlySet<string>, ever: ReadonlySet<string>) {
  const about = lines.filter(({ calls }) => calls.some((call) => now.has(call)));
  const own = about.filter(({ calls }) => calls.every((call) => ever.has(call)));
  const shared = about.filter((line) => !own.includes(line));
  return { own, shared, cost: own.reduce((sum, { amount }) => sum + amount, 0n) };
}

function hasFallen({ standing: { is } }: Facts['calls'][number]): boolean {
  return is === 'cancelled' || is === 'missed';
}

function falls(call: Facts['calls'][number], { call: id, at }: Word): boolean {
  if (id !== undefined) return call.id === id;
  const stands = call.standing.is === 'agreed' || call.standing.is === 'held';
  return stands && (at === undefined || call.planned.start.epochMilliseconds > at.epochMilliseconds);
}

function standingAfter({ at, by, reason }: Word, wasAgreed: boolean): Standing {
  return at ? { is: 'cancelled', at, by, reason, wasAgreed } : { is: 'missed', by, reason };
}
