// What a bank says of an account: its entries, each one movement of money, and how the account stood.

import type { Temporal } from '@colla/calendar';
import type { Currency } from '@colla/money';

/** One movement on an account, as the bank booked it. */
export interface BankEntry {
  /** The same each time the bank tells of this movement: what was brought in under it before is not brought in again. */
  readonly identity: string;
  readonly on: Temporal.PlainDate;
  /** In minor units: above zero what came in, below what went out. */
  readonly amount: bigint;
  readonly currency: Currency;
  /** Who paid or was paid, as the bank names them. */
  readonly name?: string;
  /** What was written with the payment. */
  readonly words: string;
  /** References that the payer's bank carried through whole: of ISO 11649 or another kind, and numbers of documents. */
  readonly references: readonly string[];
  /** The payer's own mark, carried from end to end. */
  readonly endToEnd?: string;
  /** The bank's own name for the movement, where it gives one. */
  readonly bankId?: string;
  /** True where an earlier movement is undone: a payment that came back, in or out. */
  readonly reversal: boolean;
}

/** What one file or one part of it says of one account. */
export interface BankStatement {
  /** The number of the account, or what its owner calls it. */
  readonly account: string;
  /** The bank's name for the statement, or of a file of rows none. */
  readonly id?: string;
  readonly entries: readonly BankEntry[];
  /** How many entries the bank has not booked yet; they are not among `entries`. */
  readonly pending: number;
  /** How the account stood, where the file says so in the currency of all its entries. */
  readonly balance?: Balance;
}

/** Minor units of one currency. */
export interface Balance {
  readonly currency: Currency;
  readonly opening: bigint;
  readonly closing: bigint;
  /** What the closing balance has beyond opening and entries: anything but zero says that entries are missing. */
  readonly unexplained: bigint;
}

/** An entry before it is told from others, and the texts by which the bank tells it. */
export interface Movement {
  readonly entry: Omit<BankEntry, 'identity'>;
  readonly told: readonly string[];
}

/**
 * The entries of one file with their identities, which no two share: account, day, sum and the texts by which the bank
 * tells the movement; and of movements alike in all this, the first, second, third in the file. A file holds whole
 * days, so the next file that reaches back counts a day's like movements alike. `seen` is kept from one statement of a
 * file to the next.
 */
export function identified(
  account: string,
  movements: readonly Movement[],
  seen: Map<string, number> = new Map(),
): BankEntry[] {
  return movements.map(({ entry, told }) => {
    const facts = [account, String(entry.on), `${entry.amount} ${entry.currency}`, ...told];
    const key = JSON.stringify(facts);
    const count = (seen.get(key) ?? 0) + 1;
    seen.set(key, count);
    return { identity: JSON.stringify([...facts, count]), ...entry };
  });
}
