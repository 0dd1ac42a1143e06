// Entries told from those that were brought in before, so that the same file twice changes nothing.

import type { BankEntry } from './entry.ts';

/** What is kept of an entry that was brought in. */
export type Known = Pick<BankEntry, 'identity' | 'on' | 'amount' | 'currency'>;

export interface Sorted {
  readonly fresh: readonly BankEntry[];
  /** How many were brought in before. */
  readonly again: number;
  /**
   * Identities of fresh entries that may be known ones told in another way: by the bank's other kind of file, or in
   * other words. Day and sum are those of a known entry that this file does not have.
   */
  readonly doubtful: ReadonlySet<string>;
}

/** Sorts the entries of one account's file by whether they are among those `known` of that account. */
export function sortOut(entries: readonly BankEntry[], known: readonly Known[]): Sorted {
  const before = new Set(known.map(({ identity }) => identity));
  const here = new Set(entries.map(({ identity }) => identity));
  const fresh = entries.filter(({ identity }) => !before.has(identity));
  const elsewhere = new Map<string, number>();
  for (const entry of known) if (!here.has(entry.identity)) count(elsewhere, entry, 1);
  const doubtful = fresh.filter((entry) => count(elsewhere, entry, -1) >= 0);
  return {
    fresh,
    again: entries.length - fresh.length,
    doubtful: new Set(doubtful.map(({ identity }) => identity)),
  };
}

/** Adds to how many entries have a day and sum, and answers with the new number. */
function count(counts: Map<string, number>, { on, amount, currency }: Known, more: 1 | -1): number {
  const key = `${on} ${amount} ${currency}`;
  const now = (counts.get(key) ?? 0) + more;
  counts.set(key, now);
  return now;
}
