// What is owed on top of a debt that is paid late, under a tariff's own clause for it.

import type { Temporal } from '@colla/calendar';
import type { OrRefusal } from '@colla/refusal';
import type { Facts } from './facts.ts';
import { closer, fitsEngagement } from './fit.ts';
import { kindOf } from './kinds.ts';
import type { Terms } from './statement.ts';
import { voice } from './voice.ts';

/** A debt in minor units of the tariff's currency, the day it was due, and the day on which one looks (or it was paid). */
export interface Debt {
  readonly amount: bigint;
  readonly dueOn: Temporal.PlainDate;
  readonly on: Temporal.PlainDate;
}

/** Interest and a fixed sum, in minor units, with the days that were counted and the arithmetic. */
export interface LateCharge {
  readonly clause: string;
  readonly days: number;
  readonly interest: bigint;
  readonly sum: bigint;
  readonly total: bigint;
  readonly arithmetic: string;
}

/**
 * What a debt costs that is not paid by the day it was due: undefined where the tariff says nothing of it. On the due
 * day itself nothing is owed. Refuses where the law's reference rate for the half-year is not known.
 */
export function latePayment(facts: Facts, terms: Terms, debt: Debt): OrRefusal<LateCharge> | undefined {
  const { tariff, locale } = terms;
  const fitting = tariff.clauses.filter((clause) => kindOf(clause).late && fitsEngagement(clause.for, facts));
  const clause = fitting.find((one) => !fitting.some((other) => closer(other.for, one.for)));
  if (!clause) return undefined;
  return kindOf(clause).late?.(clause.terms, debt, {
    clause: clause.id,
    currency: tariff.currency,
    voice: voice(locale, tariff.currency),
  });
}

/** Where a late payment is reckoned. */
export interface LatePlace {
  readonly clause: string;
  readonly currency: Terms['tariff']['currency'];
  readonly voice: ReturnType<typeof voice>;
}
