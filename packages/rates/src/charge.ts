// What a clause charges, and the line it becomes.

import type { Temporal } from '@colla/calendar';
import { divideRounded } from '@colla/money';
import type { ClauseHead } from './kind.ts';
import type { Category, Line, Quantity, UsedFact } from './line.ts';
import type { Voice } from './voice.ts';

/** A line as a clause writes it, before its key, amount and arithmetic are worked out. */
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

/** The line of a charge. Its amount is rate × quantity, rounded once. */
export function lineOf(clause: ClauseHead, charge: Charge, voice: Voice): Line {
  const { quantity, sign = 1n } = charge;
  const rate = sign * charge.rate;
  const amount = sign * divideRounded(charge.rate * BigInt(quantity.count), BigInt(quantity.of));
  return {
    key: charge.about === undefined ? clause.id : `${clause.id}:${charge.about}`,
    clause: clause.id,
    category: charge.category,
    payer: charge.payer ?? clause.payer,
    what: charge.what,
    calls: charge.calls ?? [],
    ...(charge.on === undefined ? {} : { on: charge.on }),
    facts: charge.facts ?? [],
    quantity,
    unit: charge.unit,
    rate,
    amount,
    arithmetic: `${charge.said ?? sayQuantity(quantity, voice)} × ${voice.money(rate)} = ${voice.money(amount)}`,
  };
}

/** As a decimal where that is exact, as a fraction otherwise: 1.25, but 50/60. */
function sayQuantity({ count, of }: Quantity, voice: Voice): string {
  const exact = (count * 1000) % of === 0;
  return exact ? voice.number(String(count / of)) : `${count}/${of}`;
}
