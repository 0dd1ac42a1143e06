// Who keeps the books, and the people and institutions they work with.

import type { Temporal, Zone } from '@colla/calendar';
import type { Currency } from '@colla/money';
import type { Term } from '@colla/rates';

/** A soloist, parent, teacher, institution or payer: anyone outside the organisation. */
export interface Party {
  readonly id: string;
  readonly name: string;
  /** Address as it stands on an envelope, line by line. */
  readonly address: readonly string[];
  readonly email?: string;
  /** What an institution needs to see on an invoice: an order or vendor number. */
  readonly reference?: string;
}

/** Whoever keeps the books: one freelance pianist, or one accompanying department. */
export interface Organisation {
  readonly id: string;
  readonly name: string;
  readonly address: readonly string[];
  readonly email?: string;
  readonly taxNumber?: string;
  /** How a payer pays, line by line, as it stands on an invoice. */
  readonly payTo: readonly string[];
  readonly currency: Currency;
  readonly zone: Zone;
  readonly locale: string;
  readonly paper: 'A4' | 'Letter';
  /** Hours of calls in a week beyond which the season says so; in minutes. */
  readonly weeklyLimit: number;
  /** Public holidays, as `2026-12-25`. */
  readonly holidays: readonly string[];
  /** The terms into which the place divides its year; none reaches into another. */
  readonly terms: readonly Term[];
  /** The last day of the years that are closed: nothing is posted on it or before. */
  readonly closedThrough?: Temporal.PlainDate;
}
