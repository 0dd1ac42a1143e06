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

/**
 * Shares `amount` out by whole-number weights so that the parts sum to it exactly: largest remainder, ties
 * to the earlier share; a negative amount mirrors the positive one. No weight may be negative and at least one
 * must be above zero. (Done here because dinero.js 2.0.2 shares 10 by 1:2:3:5 as 0, 2, 3, 5.)
 */
export function allocate(amount: bigint, weights: readonly number[]): bigint[] {
  if (weights.some((weight) => weight < 0)) throw new Error('nobody can be given less than nothing');
  const whole = weights.map(BigInt).reduce((sum, weight) => sum + weight, 0n);
  if (whole === 0n) throw new Error('nobody to share with: every weight is zero');
  const size = amount < 0n ? -amount : amount;
  const exact = weights.map((weight) => size * BigInt(weight));
  const shares = exact.map((share) => share / whole);
  const left = Number(size - shares.reduce((sum, share) => sum + share, 0n));
  for (const index of byRemainder(exact, whole).slice(0, left)) shares[index] = (shares[index] ?? 0n) + 1n;
  return amount < 0n ? shares.map((share) => -share) : shares;
}

/** Places of the shares, the largest remainder first and of equal ones the earlier. */
function byRemainder(exact: readonly bigint[], whole: bigint): number[] {
  const remainder = (index: number) => (exact[index] ?? 0n) % whole;
  return [...exact.keys()].sort((a, b) => Number(remainder(b) - remainder(a)) || a - b);
}

function mustMatch(a: Money, b: Money): void {
  if (a.currency !== b.currency) throw new Error(`${a.currency} and ${b.currency} do not mix`);
}
