// Prices that change with how much came before: the first ten hours at one, what lies beyond at another.

import type { Currency } from '@colla/money';
import { z } from 'zod';
import { amountField, countField, minutesField } from '../fields.ts';

/** What lies beyond so much, of hours in minutes, of other things by their number; until the next such step. */
export interface Further {
  readonly after: number;
  readonly price: bigint;
}

/** The prices of what lies further; `of` says what is counted. */
export function furtherField(currency: Currency, of: 'minutes' | 'count') {
  const after =
    of === 'minutes'
      ? minutesField('Beyond (minutes)', { least: 1 })
      : countField('Beyond so many', { least: 1 });
  return z
    .array(z.strictObject({ after, price: amountField(currency, 'Price') }))
    .max(12)
    .readonly()
    .default([])
    .meta({ title: 'Further ones at another price' });
}

/** Some of what is counted, at one price. */
export interface Stretch {
  readonly count: number;
  readonly price: bigint;
  /** What it lies beyond; none at the first price. */
  readonly after?: number;
}

/** What lies between two counts, stretch by stretch. */
export function stretches(
  from: number,
  until: number,
  first: bigint,
  further: readonly Further[],
): Stretch[] {
  if (further.length === 0) return until > from ? [{ count: until - from, price: first }] : [];
  return [{ after: 0, price: first }, ...further].flatMap(({ after, price }, index) => {
    const next = further[index]?.after ?? Number.POSITIVE_INFINITY;
    const count = Math.min(until, next) - Math.max(from, after);
    if (count <= 0) return [];
    return [after === 0 ? { count, price } : { count, price, after }];
  });
}

/** Why the steps cannot stand together; empty where they can. */
export function furtherContradiction(further: readonly Further[]): string[] {
  const wrong = further.find(({ after }, index) => index > 0 && after <= (further[index - 1]?.after ?? 0));
  return wrong
    ? [`Further prices must run from the least to the most: what lies beyond ${wrong.after} stands too late.`]
    : [];
}
