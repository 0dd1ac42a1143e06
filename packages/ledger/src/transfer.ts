// A transfer: value moves from one account to another. What is made of transfers balances, whatever they are.

import { type Account, accountKey } from './account.ts';

/**
 * `from` is credited and `to` is debited, by `amount` minor units of the document's currency and `book` minor units of
 * the book's. Where both are one currency the two are equal; an exchange difference moves nothing of the first.
 */
export interface Transfer {
  readonly from: Account;
  readonly to: Account;
  readonly amount: bigint;
  readonly book: bigint;
  /** Whose business it was and what for, where the accounts do not say so themselves. */
  readonly party?: string;
  readonly engagement?: string;
}

/** A sum in the document's currency and in the book's. */
export interface Sum {
  readonly amount: bigint;
  readonly book: bigint;
}

export const NOTHING: Sum = { amount: 0n, book: 0n };

/** A transfer; of less than nothing, of nothing at all, or to the account it comes from, it is a broken invariant. */
export function transfer(of: Transfer): Transfer {
  if (of.amount < 0n || of.book < 0n) throw new Error('a transfer of less than nothing was to be made');
  if (of.amount === 0n && of.book === 0n) throw new Error('a transfer of nothing was to be made');
  if (accountKey(of.from) === accountKey(of.to)) throw new Error('a transfer to where it came from');
  return of;
}

/** The transfers that move a sum of either sign: below nothing it goes the other way, of nothing there are none. */
export function move({ amount, book, ...of }: Transfer): Transfer[] {
  if (amount === 0n && book === 0n) return [];
  if (amount >= 0n && book >= 0n) return [transfer({ ...of, amount, book })];
  if (amount <= 0n && book <= 0n) return [transfer({ ...turned(of), amount: -amount, book: -book })];
  return [...move({ ...of, amount, book: 0n }), ...move({ ...of, amount: 0n, book })];
}

/** The same transfers the other way round: together the two leave everything as it was. */
export function mirror(transfers: readonly Transfer[]): Transfer[] {
  return transfers.map((of) => ({ ...of, ...turned(of) }));
}

function turned<Of extends Pick<Transfer, 'from' | 'to'>>(of: Of): Of {
  return { ...of, from: of.to, to: of.from };
}
