// Money: whole minor units in one currency.

import type { Currency } from './currency.ts';

/** An amount in minor units (cents, pence, yen) of one currency. Never a fraction, never a float. */
export interface Money {
  readonly amount: bigint;
  readonly currency: Currency;
}

export function money(amount: bigint, currency: Currency): Money {
  return { amount, currency };
}

/** The sum. Two currencies never mix: that is a broken invariant and throws. */
export function add(a: Money, b: Money): Money {
  mustMatch(a, b);
  return { amount: a.amount + b.amount, currency: a.currency };
}

/** The difference `a − b`. Two currencies never mix: that is a broken invariant and throws. */
export function subtract(a: Money, b: Money): Money {
  mustMatch(a, b);
  return { amount: a.amount - b.amount, currency: a.currency };
}

/** The sum of a list in `currency`; zero for an empty list. */
export function total(parts: readonly Money[], currency: Currency): Money {
  return parts.reduce(add, money(0n, currency));
}

function mustMatch(a: Money, b: Money): void {
  if (a.currency !== b.currency) throw new Error(`${a.currency} and ${b.currency} do not mix`);
}
