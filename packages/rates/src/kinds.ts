// What a clause answers through its kind, whichever kind that is.

import type { Temporal } from '@colla/calendar';
import type { OrRefusal } from '@colla/refusal';
import { menu } from './clauses/index.ts';
import type { Desk } from './desk.ts';
import type { ClauseHead, Counting, Phase, Rivalry } from './kind.ts';
import type { Debt, LateCharge, LatePlace } from './late.ts';
import type { Each } from './occasion.ts';
import type { Selector } from './selector.ts';
import type { Clause } from './tariff.ts';
import type { Voice } from './voice.ts';
import type { Ways } from './ways.ts';

/** A kind, seen without its exact parameter type: a clause carries terms that its own kind has read. */
interface AnyKind {
  readonly title: string;
  readonly once?: boolean;
  readonly beside?: (one: unknown, other: unknown) => boolean;
  readonly whole?: boolean;
  readonly rivalry: (terms: unknown) => Rivalry | undefined;
  readonly sentence: (terms: unknown, said: { voice: Voice; for: Selector; payer: string }) => string;
  readonly contradictions?: (terms: unknown) => string[];
  readonly names?: (terms: unknown) => readonly string[];
  readonly namesAlike?: (terms: unknown) => readonly string[];
  readonly mentions?: (terms: unknown) => readonly string[];
  readonly ways?: (terms: unknown) => Ways;
  readonly each?: (terms: unknown) => Each;
  readonly gathers?: (terms: unknown) => boolean;
  readonly rank?: (terms: unknown) => number;
  readonly needs?: (terms: unknown) => readonly string[];
  readonly turns?: (
    terms: unknown,
    start: Temporal.ZonedDateTime,
    holidays: ReadonlySet<string>,
  ) => Temporal.ZonedDateTime[];
  readonly counts?: (terms: unknown) => Counting | undefined;
  readonly late?: (terms: unknown, debt: Debt, place: LatePlace) => OrRefusal<LateCharge>;
  readonly phases: Partial<Record<Phase, (terms: unknown, desk: Desk, clause: ClauseHead) => void>>;
}

export function kindOf(clause: Clause): AnyKind {
  return menu[clause.kind] as AnyKind;
}

/** What it does to a call that only one clause may do. */
export function rivalryOf(clause: Clause): Rivalry | undefined {
  return kindOf(clause).rivalry(clause.terms);
}

/** The clauses it speaks of, by id. */
export function namesOf(clause: Clause): readonly string[] {
  return kindOf(clause).names?.(clause.terms) ?? [];
}

/** Every clause it names or mentions, by id. */
export function speaksOf(clause: Clause): readonly string[] {
  return [...namesOf(clause), ...(kindOf(clause).mentions?.(clause.terms) ?? [])];
}

/** The clauses it names as others of its own kind, by id. */
export function namesAlikeOf(clause: Clause): readonly string[] {
  return kindOf(clause).namesAlike?.(clause.terms) ?? [];
}

/** The instants at which what it says of a call that starts at `start` changes, were it cancelled then. */
export function turnsOf(
  clause: Clause,
  start: Temporal.ZonedDateTime,
  holidays: ReadonlySet<string>,
): readonly Temporal.ZonedDateTime[] {
  return kindOf(clause).turns?.(clause.terms, start, holidays) ?? [];
}

/** Ways of charging of which only one holds; undefined where it says of none. */
export function waysOf(clause: Clause): Ways | undefined {
  return kindOf(clause).ways?.(clause.terms);
}

/** The occasion for which it charges at once. */
export function eachOf(clause: Clause): Each {
  const { whole, each } = kindOf(clause);
  return whole ? 'engagement' : (each?.(clause.terms) ?? 'call');
}

/** Whether it takes what it names together for each of its occasions. */
export function gathers(clause: Clause): boolean {
  return kindOf(clause).gathers?.(clause.terms) ?? false;
}

/** Its place among clauses that work in the same phase. */
export function rankOf(clause: Clause): number {
  return kindOf(clause).rank?.(clause.terms) ?? 0;
}

/** The kinds of clause it cannot do without. */
export function needsOf(clause: Clause): readonly string[] {
  return kindOf(clause).needs?.(clause.terms) ?? [];
}

/** How it counts the minutes of a call it prices; undefined where it counts them as played. */
export function countingOf(clause: Clause): Counting | undefined {
  return kindOf(clause).counts?.(clause.terms);
}

/** Whether an engagement can have only one of these two. */
export function excludes(one: Clause, other: Clause): boolean {
  const { once, beside } = kindOf(one);
  return one.kind === other.kind && once === true && !beside?.(one.terms, other.terms);
}
