// The trial balance: what each account holds on its own side, and that both sides are one sum.

import type { Temporal } from '@colla/calendar';
import { type Account, INCOME_KINDS, PURPOSES, type Purpose, spoken } from './account.ts';
import { type Balance, balances } from './balances.ts';
import type { Posted } from './journal.ts';

/** A purpose, and of income its kind or of tax its name; in minor units of the book's currency. */
export interface TrialRow {
  readonly purpose: Purpose;
  readonly of?: string;
  readonly debit: bigint;
  readonly credit: bigint;
}

export interface TrialBalance {
  readonly rows: readonly TrialRow[];
  /** The sum of either side. */
  readonly total: bigint;
}

/** The trial balance at the end of a day, in the book's currency. Sides that differ are a broken invariant. */
export function trialBalance(posted: readonly Posted[], asAt?: Temporal.PlainDate): TrialBalance {
  return trialBalanceOf(balances(posted, asAt ? { asAt } : {}));
}

/** The same of the balances of all accounts at the end of that day. */
export function trialBalanceOf(held: readonly Balance[]): TrialBalance {
  const sums = new Map<string, { purpose: Purpose; of: string | undefined; debit: bigint }>();
  for (const { account, book } of held) {
    const { purpose } = account;
    const of = detail(account);
    const key = `${purpose} ${of}`;
    sums.set(key, { purpose, of, debit: (sums.get(key)?.debit ?? 0n) + spoken(account, book) });
  }
  const rows = [...sums.values()]
    .filter(({ debit }) => debit !== 0n)
    .sort(byPlace)
    .map(row);
  const debit = rows.reduce((sum, { debit }) => sum + debit, 0n);
  const credit = rows.reduce((sum, { credit }) => sum + credit, 0n);
  if (debit !== credit) throw new Error(`the books do not balance: ${debit} and ${credit}`);
  return { rows, total: debit };
}

function detail(account: Account): string | undefined {
  if (account.purpose === 'income') return account.kind;
  return account.purpose === 'tax collected' ? account.tax : undefined;
}

function row({ purpose, of, debit }: { purpose: Purpose; of: string | undefined; debit: bigint }): TrialRow {
  return {
    purpose,
    ...(of === undefined ? {} : { of }),
    debit: debit > 0n ? debit : 0n,
    credit: debit < 0n ? -debit : 0n,
  };
}

interface Placed {
  readonly purpose: Purpose;
  readonly of?: string | undefined;
}

/** In the order of the purposes, kinds of income in theirs, and taxes by name: the same whatever was posted first. */
function byPlace(one: Placed, other: Placed): number {
  return (
    PURPOSES.indexOf(one.purpose) - PURPOSES.indexOf(other.purpose) ||
    placeOf(one) - placeOf(other) ||
    ((one.of ?? '') < (other.of ?? '') ? -1 : 1)
  );
}

function placeOf({ of }: Placed): number {
  const kinds: readonly (string | undefined)[] = INCOME_KINDS;
  return kinds.indexOf(of);
}
