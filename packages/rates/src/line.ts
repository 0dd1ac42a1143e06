// A line of a statement: one amount that can say why.

import type { Temporal } from '@colla/calendar';

/** What an amount is for; the kind of income it becomes. */
export const CATEGORIES = [
  'rehearsal',
  'performance',
  'package',
  'entitlement',
  'supplement',
  'discount',
  'cancellation',
  'travel',
  'cost',
  'other',
] as const;
export type Category = (typeof CATEGORIES)[number];

/** A count as an exact fraction: 70 minutes of an hour are 70/60. `of` is positive. */
export interface Quantity {
  readonly count: number;
  readonly of: number;
}

/** A fact a line used, named so that a screen can say it: `played` 70 minutes, `notice` 30 hours. */
export interface UsedFact {
  readonly name: string;
  readonly value: string;
}

/**
 * `amount` is `rate × quantity`, rounded once to whole minor units; both are minor units of the statement's
 * currency. `key` says which clause prices what, and stays the same from one statement to the next, so that
 * what was invoiced can be set against what is owed.
 */
export interface Line {
  readonly key: string;
  readonly clause: string;
  readonly category: Category;
  readonly payer: string;
  readonly what: string;
  readonly calls: readonly string[];
  /** The day of a journey or a cost; what belongs to calls has their days. */
  readonly on?: Temporal.PlainDate;
  readonly facts: readonly UsedFact[];
  readonly quantity: Quantity;
  readonly unit: string;
  readonly rate: bigint;
  readonly amount: bigint;
  readonly arithmetic: string;
}
