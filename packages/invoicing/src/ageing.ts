// What each payer owes and since when, as at any day, read off the ledger.

import type { Temporal } from '@colla/calendar';
import { type Balance, balances, type Posted } from '@colla/ledger';
import type { Currency } from '@colla/money';
import type { OpenInvoice } from './allocation.ts';
import { stillOwed } from './due-parts.ts';

/** By how many days what is owed is late, at most; what is not due yet by none. */
export const AGES = ['not due', 'up to 30', 'up to 60', 'up to 90', 'over 90'] as const;
export type Age = (typeof AGES)[number];

/** What one payer owes in one currency, in minor units. */
export interface Aged {
  readonly party: string;
  readonly currency: Currency;
  readonly owed: Readonly<Record<Age, bigint>>;
  /** Kept as their credit; below nothing where a payment bounced whose rest had been used. */
  readonly credit: bigint;
  /** Held as deposits, which settle nothing until they are applied. */
  readonly deposits: bigint;
  /** What is owed in all, less the credit. */
  readonly total: bigint;
}

/** What an invoice is known by here. */
type Dated = Pick<OpenInvoice, 'invoice' | 'dueOn' | 'parts'>;

/**
 * What every payer owed at the end of a day, by how late it was then, in the order of the postings. A debt is late from
 * the day after it was due, each part of it from its own; what came settles the earliest. Every invoice that the postings
 * name must be given: a debt without a day is a broken invariant.
 */
export function ageing(
  posted: readonly Posted[],
  invoices: readonly Dated[],
  asAt: Temporal.PlainDate,
): Aged[] {
  return aged(balances(posted, { asAt }), invoices, asAt);
}

/** The same of balances at the end of that day. */
export function aged(held: readonly Balance[], invoices: readonly Dated[], asAt: Temporal.PlainDate): Aged[] {
  const known = new Map(invoices.map((of) => [of.invoice, of]));
  const sums = new Map<string, Aged>();
  for (const { account, currency, amount } of held) {
    if (!('party' in account) || amount === 0n) continue;
    const key = `${account.party} ${currency}`;
    const so = sums.get(key) ?? nothing(account.party, currency);
    if (account.purpose === 'credit held') sums.set(key, { ...so, credit: so.credit + amount });
    else if (account.purpose === 'deposits held') sums.set(key, { ...so, deposits: so.deposits + amount });
    else sums.set(key, byAge(so, amount, { of: known.get(account.invoice), asAt }));
  }
  return [...sums.values()].map((of) => ({ ...of, total: sum(of.owed) - of.credit }));
}

function nothing(party: string, currency: Currency): Aged {
  const owed = { 'not due': 0n, 'up to 30': 0n, 'up to 60': 0n, 'up to 90': 0n, 'over 90': 0n };
  return { party, currency, owed, credit: 0n, deposits: 0n, total: 0n };
}

/** What is owed on one invoice, part by part. */
function byAge(
  so: Aged,
  amount: bigint,
  { of, asAt }: { of: Dated | undefined; asAt: Temporal.PlainDate },
): Aged {
  if (!of?.parts) return older(so, amount, ageOf(of?.dueOn, asAt));
  return stillOwed(amount, of.parts).reduce((sum, part) => older(sum, part.amount, ageOf(part.on, asAt)), so);
}

function older(so: Aged, amount: bigint, age: Age): Aged {
  return { ...so, owed: { ...so.owed, [age]: so.owed[age] + amount } };
}

/** How late a debt is on a day. */
export function ageOf(dueOn: Temporal.PlainDate | undefined, asAt: Temporal.PlainDate): Age {
  if (!dueOn) throw new Error('a debt of an invoice that nobody knows');
  const late = dueOn.until(asAt, { largestUnit: 'days' }).days;
  if (late <= 0) return 'not due';
  if (late <= 30) return 'up to 30';
  if (late <= 60) return 'up to 60';
  return late <= 90 ? 'up to 90' : 'over 90';
}

function sum(owed: Aged['owed']): bigint {
  return AGES.reduce((so, age) => so + owed[age], 0n);
}
