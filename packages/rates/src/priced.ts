// Clauses and facts written the short way, priced: for examples and tests.

import { Temporal } from '@colla/calendar';
import { type Currency, currency, toDecimal } from '@colla/money';
import { granted } from '@colla/refusal';
import type { Facts } from './facts.ts';
import { type Given, given } from './given.ts';
import { type Statement, statement } from './statement.ts';
import { readTariff, type Tariff, type WrittenClause } from './tariff.ts';

/** Examples are priced in pounds unless they say otherwise. */
export const POUNDS: Currency = granted(currency('GBP'));

/** Half a year after the days on which calls of examples happen. */
const LATER = '2026-12-31T12:00[Europe/London]';

/** A tariff of these clauses. A slip in them throws: they are written by us, not by users. */
export function tariffOf(clauses: readonly WrittenClause[], money: Currency = POUNDS): Tariff {
  return granted(readTariff({ name: 'Example', currency: money, version: 1, from: '2026-01-01', clauses }));
}

/** The statement of facts written the short way, or whole, under these clauses. */
export function priced(clauses: readonly WrittenClause[], facts: Given | Facts, asOf = LATER): Statement {
  const whole = 'programme' in facts ? facts : given(facts, POUNDS);
  return statement(whole, { tariff: tariffOf(clauses), locale: 'en-GB' }, Temporal.ZonedDateTime.from(asOf));
}

/** Pounds as decimal text. */
export function pounds(amount: bigint): string {
  return toDecimal(amount, POUNDS);
}
