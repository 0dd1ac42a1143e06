// What every kind of clause answers about itself.

import type { Temporal } from '@colla/calendar';
import type { Currency } from '@colla/money';
import type { OrRefusal } from '@colla/refusal';
import type { z } from 'zod';
import type { Desk } from './desk.ts';
import type { Given } from './given.ts';
import type { Debt, LateCharge, LatePlace } from './late.ts';
import type { Each } from './occasion.ts';
import type { Selector } from './selector.ts';
import type { Voice } from './voice.ts';
import type { Ways } from './ways.ts';

/**
 * The order in which clauses do their work, whatever order they are written in:
 * which calls count, and how far (standing) → hours and packages that cover them (coverage) → rates for what
 * is left → supplements → discounts → what a cancellation leaves → limits → the deposit → travel and costs →
 * who pays → tax → when. A clause that names others waits for them. Within a phase clauses work by their rank,
 * then in the order written, which matters only to those that draw on the same calls: entitlements and packages.
 */
export const PHASES = [
  'standing',
  'coverage',
  'rates',
  'supplements',
  'discounts',
  'cancellation',
  'limits',
  'deposit',
  'travel',
  'split',
  'tax',
  'terms',
] as const;
export type Phase = (typeof PHASES)[number];

/** Putting a price on a call, saying what is owed when it falls, and what its absence takes off: only one clause may do each. */
export type Rivalry = 'price' | 'fall' | 'absence';

/** What all clauses have, whatever their kind. */
export interface ClauseHead {
  readonly id: string;
  readonly kind: string;
  /** What it applies to. */
  readonly for: Selector;
  /** Who pays what it charges; `payer` where the tariff names nobody. */
  readonly payer: string;
}

/** Minutes of a call: as planned, as played, and waited between the agreed start and the real one. */
export interface Times {
  readonly planned: number;
  readonly played: number;
  readonly waited: number;
}

/** The minutes of a call that count, for what covers it and for what charges it alike. */
export type Counting = (times: Times) => number;

/** One worked case: what is given, in words and facts, and what is owed, by hand. */
export interface Example<Written> {
  readonly case: string;
  readonly for?: Selector;
  readonly terms: Written;
  readonly given: Given;
  /** Other clauses of the tariff it needs to have something to work on, as written. */
  readonly with?: readonly {
    id: string;
    kind: string;
    for: Selector;
    terms: Readonly<Record<string, unknown>>;
  }[];
  /** The clause's own lines together, as decimal text. */
  readonly owed: string;
  /** What else it comes to, where it writes no lines of its own: the deposit asked for, its tax, what each payer pays, and when. */
  readonly also?: {
    readonly deposit?: string;
    readonly tax?: string;
    readonly payers?: Readonly<Record<string, string>>;
    /** The day on which it is to be paid, were it invoiced on 1 April 2026. */
    readonly due?: string;
    /** The parts in which it is to be paid. */
    readonly parts?: readonly string[];
  };
}

/** A kind of clause: one value in one file, and a line in the menu. */
export interface ClauseKind<Kind extends string, Schema extends z.ZodType> {
  readonly kind: Kind;
  /** Its name on the screen. */
  readonly title: string;
  /** One sentence that says what it is for. */
  readonly help: string;
  /** Its parameters in one currency. */
  readonly schema: (currency: Currency) => Schema;
  /** What it does to a call that only one clause may do; of two that fit a call the closer one goes first. */
  readonly rivalry: (terms: z.output<Schema>) => Rivalry | undefined;
  /** True where an engagement can have one only: of two that fit it the closer one holds, the other does nothing. */
  readonly once?: boolean;
  /** Of a kind that an engagement can have once: whether these two speak of different things, so that both hold. */
  readonly beside?: (one: z.output<Schema>, other: z.output<Schema>) => boolean;
  /** True where it is about the engagement as a whole, and so cannot be for some calls of it only. */
  readonly whole?: boolean;
  /** The parameter an agreement may choose within the clause's band. */
  readonly choice?: string;
  /** The sentence a client reads. */
  readonly sentence: (
    terms: z.output<Schema>,
    said: { voice: Voice; for: Selector; payer: string },
  ) => string;
  /** What its own parameters contradict, as sentences; none where they agree. */
  readonly contradictions?: (terms: z.output<Schema>) => string[];
  /** Clauses it names by id. */
  readonly names?: (terms: z.output<Schema>) => readonly string[];
  /** Of the clauses it names, those that have to be of its own kind. */
  readonly namesAlike?: (terms: z.output<Schema>) => readonly string[];
  /** Clauses it speaks of by id without waiting for them. */
  readonly mentions?: (terms: z.output<Schema>) => readonly string[];
  /** Ways of charging of which only one holds. */
  readonly ways?: (terms: z.output<Schema>) => Ways;
  /** The occasion for which it charges at once; each call for itself where left out. */
  readonly each?: (terms: z.output<Schema>) => Each;
  /** Whether it takes what it names together for each of its occasions: then nothing that it names is for longer. */
  readonly gathers?: (terms: z.output<Schema>) => boolean;
  /** Its place among clauses that work in the same phase, the lowest first; as written where left out. */
  readonly rank?: (terms: z.output<Schema>) => number;
  /** The kinds of clause without which it cannot say what is owed. */
  readonly needs?: (terms: z.output<Schema>) => readonly string[];
  /** The instants at which what it says of a call changes, were the call cancelled then; none where it never does. */
  readonly turns?: (
    terms: z.output<Schema>,
    start: Temporal.ZonedDateTime,
    holidays: ReadonlySet<string>,
  ) => Temporal.ZonedDateTime[];
  /** How it counts the minutes of a call it prices; as played where left out. */
  readonly counts?: (terms: z.output<Schema>) => Counting | undefined;
  /** What it makes of a debt that is paid late. */
  readonly late?: (terms: z.output<Schema>, debt: Debt, place: LatePlace) => OrRefusal<LateCharge>;
  /** What it does, phase by phase. */
  readonly phases: Partial<Record<Phase, (terms: z.output<Schema>, desk: Desk, clause: ClauseHead) => void>>;
  /** Worked by hand: its tests and its help text. The first one's terms are what the editor starts from. */
  readonly examples: readonly [Example<z.input<Schema>>, ...Example<z.input<Schema>>[]];
}

/** Keeps the exact types of a kind while checking its shape. */
export function clauseKind<Kind extends string, Schema extends z.ZodType>(
  of: ClauseKind<Kind, Schema>,
): ClauseKind<Kind, Schema> {
  return of;
}

/** One schema for each currency, made once: building a schema is slow, reading with it is not. */
export function perCurrency<Schema>(make: (currency: Currency) => Schema): (currency: Currency) => Schema {
  const made = new Map<Currency, Schema>();
  return (currency) => {
    const known = made.get(currency);
    if (known) return known;
    const schema = make(currency);
    made.set(currency, schema);
    return schema;
  };
}
