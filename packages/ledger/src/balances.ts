// What the accounts hold, as at the end of a day: by account, party, engagement or document.

import { Temporal } from '@colla/calendar';
import type { Currency } from '@colla/money';
import { type Account, accountKey, type IncomeKind, type Purpose, spoken } from './account.ts';
import type { Posted } from './journal.ts';
import { NOTHING, type Sum } from './transfer.ts';

/** Which postings are meant: those that fit everything asked; all of them where nothing is. */
export interface Which {
  readonly purpose?: Purpose;
  readonly kind?: IncomeKind;
  readonly party?: string;
  readonly invoice?: string;
  readonly engagement?: string;
  readonly currency?: Currency;
  /** The record that posted them. */
  readonly source?: string;
  /** Up to the end of this day. */
  readonly asAt?: Temporal.PlainDate;
}

/** What one account holds in one currency, as people speak of it (`spoken`). */
export interface Balance extends Sum {
  readonly account: Account;
  readonly currency: Currency;
}

/** The balances of the accounts that postings touch, each currency by itself; accounts that hold nothing are left out. */
export function balances(posted: readonly Posted[], which: Which = {}): Balance[] {
  const held = new Map<string, Balance>();
  for (const of of posted) {
    if (!fits(of, which)) continue;
    const { account, currency } = of;
    const key = `${currency}${accountKey(account)}`;
    const so = held.get(key) ?? NOTHING;
    const more = inWords(of);
    held.set(key, { account, currency, amount: so.amount + more.amount, book: so.book + more.book });
  }
  return [...held.values()].filter(({ amount, book }) => amount !== 0n || book !== 0n);
}

/** One sum of postings of one purpose and currency, as people speak of it. Two purposes do not add up. */
export function balance(
  posted: readonly Posted[],
  which: Which & { readonly purpose: Purpose; readonly currency: Currency },
): Sum {
  return posted.filter((of) => fits(of, which)).reduce((so, of) => plus(so, inWords(of)), NOTHING);
}

/** What an account itself holds in a currency, as debits: what `realised` asks of the books. */
export function heldIn(posted: readonly Posted[], account: Account, currency: Currency): Sum {
  const key = accountKey(account);
  return posted
    .filter((of) => of.currency === currency && accountKey(of.account) === key)
    .reduce((so, of) => plus(so, of), NOTHING);
}

/**
 * Whether a posting is among those meant. An account that names its party says for itself whose and what for it is; for
 * others their posting does. What is owed is asked for by invoice, not by engagement.
 */
export function fits(posted: Posted, which: Which): boolean {
  const { account } = posted;
  const { party, engagement }: { party?: string; engagement?: string } =
    'party' in account ? account : posted;
  return (
    asked(which.purpose, account.purpose) &&
    asked(which.kind, 'kind' in account ? account.kind : undefined) &&
    asked(which.party, party) &&
    asked(which.invoice, 'invoice' in account ? account.invoice : undefined) &&
    asked(which.engagement, engagement) &&
    asked(which.currency, posted.currency) &&
    asked(which.source, posted.source.id) &&
    (which.asAt === undefined || Temporal.PlainDate.compare(posted.on, which.asAt) <= 0)
  );
}

function asked<Value>(wanted: Value | undefined, value: Value | undefined): boolean {
  return wanted === undefined || wanted === value;
}

function inWords({ account, amount, book }: Posted): Sum {
  return { amount: spoken(account, amount), book: spoken(account, book) };
}

function plus(one: Sum, other: Sum): Sum {
  return { amount: one.amount + other.amount, book: one.book + other.book };
}
