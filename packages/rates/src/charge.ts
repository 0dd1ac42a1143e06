// What a clause charges, before it is a line.

import type { Temporal } from '@colla/calendar';
import type { Category, Quantity, UsedFact } from './line.ts';

/** A line as a clause writes it; the desk works out key, amount and arithmetic. */
export interface Charge {
  readonly category: Category;
  readonly what: string;
  readonly calls?: readonly string[];
  readonly on?: Temporal.PlainDate;
  readonly facts?: readonly UsedFact[];
  readonly quantity: Quantity;
  readonly unit: string;
  readonly rate: bigint;
  /** Tells two charges of one clause apart: a call's or leg's id. */
  readonly about?: string;
  readonly payer?: string;
  /** −1 for what is taken off. */
  readonly sign?: 1n | -1n;
  /** How the quantity is said in the arithmetic; plain figures where left out. */
  readonly said?: string;
}
