// What it would come to if an agreed call were moved, shown before anybody says it.

import type { Span, Temporal } from '@colla/calendar';
import type { Who } from '@colla/hours';
import { type Facts, type Statement, statement, type Terms } from '@colla/rates';

/** An agreed call is to stand at another time: by whose wish, and when word of it came. */
export interface Shift {
  readonly call: string;
  readonly to: Span;
  readonly at: Temporal.ZonedDateTime;
  /** Undefined where it is nobody's wish: it was written down wrong. */
  readonly by: Who | undefined;
}

export interface Shifted {
  /** The statements without and with the move. */
  readonly before: Statement;
  readonly after: Statement;
  /** The clauses that charge something else for it, in the order of their lines. */
  readonly clauses: readonly string[];
}

/** What the engagement comes to before and after. Pure; nothing is kept. */
export function shiftOf(facts: Facts, terms: Terms, shift: Shift, asOf: Temporal.ZonedDateTime): Shifted {
  const before = statement(facts, terms, asOf);
  const after = statement(withShift(facts, shift), terms, asOf);
  return { before, after, clauses: changed(before, after) };
}

function withShift(facts: Facts, { call: id, to, at, by }: Shift): Facts {
  const was = facts.calls.find((call) => call.id === id)?.planned;
  const calls = facts.calls.map((call) => (call.id === id ? { ...call, planned: to } : call));
  const moves = facts.moves ?? [];
  return { ...facts, calls, moves: was && by ? [...moves, { call: id, was, at, by }] : moves };
}

function changed(before: Statement, after: Statement): string[] {
  const stood = new Map(before.lines.map(({ key, amount }) => [key, amount]));
  const differ = after.lines.filter(({ key, amount }) => stood.get(key) !== amount);
  return [...new Set(differ.map(({ clause }) => clause))];
}
