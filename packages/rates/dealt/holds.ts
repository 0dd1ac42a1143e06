// How a truth is held against what fast-check deals, and the instant at which it looks.

import type { Temporal } from '@colla/calendar';
import type { Call, Reason } from '@colla/hours';
import fc from 'fast-check';
import type { Facts } from '../src/facts.ts';
import { type Statement, statement } from '../src/statement.ts';
import type { Tariff } from '../src/tariff.ts';
import { midnight } from './facts.ts';

/** Three weeks in: of the calls dealt, some are past and some to come. */
export const asOf = midnight.add({ days: 20 });

export function holds<Dealt extends [unknown, ...unknown[]]>(
  dealt: { [Key in keyof Dealt]: fc.Arbitrary<Dealt[Key]> },
  truth: (...values: Dealt) => void,
): void {
  fc.assert(fc.property(...dealt, truth), { numRuns: 150 });
}

export function price(facts: Facts, tariff: Tariff): Statement {
  return statement(facts, { tariff, locale: 'en-GB' }, asOf);
}

export function sum(amounts: readonly bigint[]): bigint {
  return amounts.reduce((sum, amount) => sum + amount, 0n);
}

export function cancelled(call: Call, at: Temporal.ZonedDateTime, reason: Reason = 'other'): Call {
  return { ...call, standing: { is: 'cancelled', at, by: 'payer', reason, wasAgreed: true } };
}
