// A statement of account: everything that made a payer owe more or less between two days, read off the ledger.

import { Temporal } from '@colla/calendar';
import { balance, fits, type Posted, type Source } from '@colla/ledger';
import type { Currency } from '@colla/money';

/** What one journal did to what a payer owes. Above nothing they owe more by it. Minor units. */
export interface AccountEntry {
  readonly on: Temporal.PlainDate;
  readonly event: string;
  readonly source: Source;
  readonly amount: bigint;
  /** What they owe after it; below nothing it is their credit. */
  readonly balance: bigint;
}

/** Who the statement is of, in which currency, and between which days, both of which belong to it. */
export interface AccountSpan {
  readonly party: string;
  readonly currency: Currency;
  readonly from: Temporal.PlainDate;
  readonly to: Temporal.PlainDate;
}

export interface AccountStatement extends AccountSpan {
  readonly opening: bigint;
  readonly entries: readonly AccountEntry[];
  readonly closing: bigint;
  /** Held as deposits at the end, beside what is owed. */
  readonly deposits: bigint;
}

/**
 * What a payer owed before the first day, what changed it, and what they owe at the end of the last: debts less credit.
 * A journal that only sets a credit against a debt changes nothing and is left out; a deposit counts once it is applied.
 */
export function accountStatement(posted: readonly Posted[], span: AccountSpan): AccountStatement {
  const { party, currency, from, to } = span;
  const theirs = posted.filter((of) => fits(of, { party, currency, asAt: to }) && isDebt(of));
  const opening = sum(theirs.filter(({ on }) => Temporal.PlainDate.compare(on, from) < 0));
  const entries: AccountEntry[] = [];
  let owed = opening;
  for (const of of journals(theirs.filter(({ on }) => Temporal.PlainDate.compare(on, from) >= 0))) {
    const amount = sum(of);
    const [{ on, event, source }] = of;
    owed += amount;
    if (amount !== 0n) entries.push({ on, event, source, amount, balance: owed });
  }
  const deposits = balance(posted, { purpose: 'deposits held', party, currency, asAt: to }).amount;
  return { ...span, opening, entries, closing: owed, deposits };
}

function isDebt({ account: { purpose } }: Posted): boolean {
  return purpose === 'receivable' || purpose === 'credit held';
}

/** Postings by journal, in the order of their days, and within one as they were posted. */
function journals(posted: readonly Posted[]): [Posted, ...Posted[]][] {
  const groups = new Map<string, [Posted, ...Posted[]]>();
  for (const of of posted.toSorted((one, other) => Temporal.PlainDate.compare(one.on, other.on))) {
    const known = groups.get(of.journal);
    if (known) known.push(of);
    else groups.set(of.journal, [of]);
  }
  return [...groups.values()];
}

/** As debits: a debt adds, a credit takes off. */
function sum(posted: readonly Posted[]): bigint {
  return posted.reduce((so, { amount }) => so + amount, 0n);
}
