// Exchange differences: what is owed or held goes out of the books as it came in, and the rest is gain or loss.

import { divideRounded } from '@colla/money';
import { type Account, accountKey, type Purpose } from './account.ts';
import { move, NOTHING, type Sum, type Transfer } from './transfer.ts';

/** What an account holds before, as debits. */
export type HeldBefore = (account: Account) => Sum;

/** What others owe and what is owed to them; what lies at the bank changes its worth without anybody's act. */
const SETTLED: readonly Purpose[] = ['receivable', 'deposits held', 'credit held'];

const EXCHANGE_DIFFERENCE = { purpose: 'exchange difference' } as const;

/**
 * The transfers that realise exchange differences after these: an account that is settled in part leaves with its
 * share of what it stands at in the book, and with all of it when nothing is left. None in one currency.
 */
export function realised(transfers: readonly Transfer[], before: HeldBefore): Transfer[] {
  return changesBy(transfers)
    .filter(({ account }) => SETTLED.includes(account.purpose))
    .flatMap(({ account, change }) => {
      const excess = change.book - carried(before(account), change);
      return move({ from: account, to: EXCHANGE_DIFFERENCE, amount: 0n, book: excess });
    });
}

/** What transfers change on each account they touch, as debits, in the order they touch them. */
export function changesBy(transfers: readonly Transfer[]): { account: Account; change: Sum }[] {
  const changes = new Map<string, { account: Account; change: Sum }>();
  const add = (account: Account, amount: bigint, book: bigint) => {
    const { change } = changes.get(accountKey(account)) ?? { change: NOTHING };
    const sum = { amount: change.amount + amount, book: change.book + book };
    changes.set(accountKey(account), { account, change: sum });
  };
  for (const { from, to, amount, book } of transfers) {
    add(from, -amount, -book);
    add(to, amount, book);
  }
  return [...changes.values()];
}

/**
 * What a change is in the book: as it is told where it adds to what is held; else its share of what that stands at, and
 * as told again for what goes beyond it.
 */
function carried(held: Sum, change: Sum): bigint {
  const apart = held.amount > 0n !== change.amount > 0n;
  if (held.amount === 0n || change.amount === 0n || !apart) return change.book;
  if (size(change.amount) <= size(held.amount)) return partOf(held, change.amount);
  return partOf(change, change.amount + held.amount) - held.book;
}

/** What a part of a sum is in the book: its share of what the whole is. */
export function partOf(whole: Sum, amount: bigint): bigint {
  return whole.amount === amount ? whole.book : share(whole.book, amount, whole.amount);
}

/** What parts of a sum are in the book, one after the other: each is the difference of two running totals. */
export function partsOf(whole: Sum, amounts: readonly bigint[]): bigint[] {
  let so = 0n;
  return amounts.map((amount) => {
    const before = so === 0n ? 0n : partOf(whole, so);
    so += amount;
    return partOf(whole, so) - before;
  });
}

function share(of: bigint, part: bigint, whole: bigint): bigint {
  return divideRounded(whole < 0n ? -of * part : of * part, size(whole));
}

function size(amount: bigint): bigint {
  return amount < 0n ? -amount : amount;
}
