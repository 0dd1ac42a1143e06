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
  /** The lines that come to something else, those that fall away with nothing. */
  readonly changes: readonly Change[];
}

/** One line as it would read, and by how much it differs in minor units. */
export interface Change {
  readonly clause: string;
  readonly key: string;
  readonly what: string;
  readonly arithmetic: string;
  readonly more: bigint;
}

/** What the engagement comes to before and after. Pure; nothing is kept. */
export function shiftOf(facts: Facts, terms: Terms, shift: Shift, asOf: Temporal.ZonedDateTime): Shifted {
  const before = statement(facts, terms, asOf);
  const after = statement(withShift(facts, shift), terms, asOf);
  return { before, after, changes: changesOf(before, after) };
}

function withShift(facts: Facts, { call: id, to, at, by }: Shift): Facts {
  const was = facts.calls.find((call) => call.id === id)?.planned;
  const calls = facts.calls.map((call) => (call.id === id ? { ...call, planned: to } : call));
  const moves = facts.moves ?? [];
  return { ...facts, calls, moves: was && by ? [...moves, { call: id, was, at, by }] : moves };
}

function changesOf(before: Statement, after: Statement): Change[] {
  const stood = new Map(before.lines.map(({ key, amount }) => [key, amount]));
  const stands = new Set(after.lines.map(({ key }) => key));
  const gone = before.lines.filter(({ key }) => !stands.has(key));
  return [
    ...after.lines.map((line) => ({ ...line, more: line.amount - (stood.get(line.key) ?? 0n) })),
    ...gone.map((line) => ({ ...line, more: -line.amount })),
  ]
    .filter(({ more }) => more !== 0n)
    .map(({ clause, key, what, arithmetic, more }) => ({ clause, key, what, arithmetic, more }));
}
