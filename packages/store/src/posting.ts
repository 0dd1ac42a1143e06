// Posts what happens to the money: its journal is kept in the transaction that keeps its record, or neither is.

import type { Temporal } from '@colla/calendar';
import { happened, type MoneyEvent, post, touched } from '@colla/invoicing';
import { type Account, accountKey, type ExchangeRate, NOTHING, type Sum } from '@colla/ledger';
import { refused } from '@colla/refusal';
import { sql } from 'drizzle-orm';
import { organisationBooks } from './organisations.ts';
import { accountRow, journalRow, postingRows, saidOf } from './posting-rows.ts';
import { Refused } from './refused.ts';
import { inserting, pack } from './rows.ts';
import { statement } from './statement.ts';
import { journals } from './tables/journals.ts';
import { postings } from './tables/postings.ts';
import type { Transaction } from './transaction.ts';

/** What is known beside a record where it is entered: which day it is, and what a foreign currency is worth. */
export interface Entering {
  readonly today: Temporal.PlainDate;
  readonly rate?: ExchangeRate;
}

const add = statement(sql`with journal as (${inserting(journals, 'journal')}),
  postings as (${inserting(postings, 'postings')}) select 1`);
const lock = statement(
  sql`select pg_advisory_xact_lock(hashtextextended(${sql.placeholder('party')}::text, 0))::text`,
);
const holding = statement(sql`select wanted.at, sum(held.amount)::text, sum(held.book)::text
  from json_to_recordset(${sql.placeholder('accounts')}::text::json)
    as wanted (at integer, purpose text, party uuid, invoice uuid, engagement uuid)
  join lateral (
    select ${postings.amount}, ${postings.book} from ${postings}
      where ${postings.invoice} = wanted.invoice and ${postings.party} = wanted.party
        and ${postings.currency} = ${sql.placeholder('currency')}
    union all
    select ${postings.amount}, ${postings.book} from ${postings}
      where wanted.invoice is null and coalesce(${postings.party}, ${postings.aboutParty}) = wanted.party
        and ${postings.purpose} = wanted.purpose
        and ${postings.engagement} is not distinct from wanted.engagement
        and ${postings.currency} = ${sql.placeholder('currency')}
  ) as held on true group by wanted.at`);

/** Lets nobody else touch the money of a party until the transaction ends: two payments at once take turns. */
export async function lockMoneyOf(transaction: Transaction, party: string): Promise<void> {
  await lock(transaction, { party });
}

/**
 * Posts an event whose record is kept already. Throws `Refused` where it cannot be: a day that is closed or to come, a
 * foreign currency without its rate, and what was taken back or settled meanwhile.
 */
export async function enter(
  transaction: Transaction,
  event: MoneyEvent,
  { today, rate }: Entering,
): Promise<void> {
  const accounts = distinct(touched(event));
  const [first] = accounts.flatMap((account) => ('party' in account ? [account.party] : []));
  const [organisation, , before] = await Promise.all([
    organisationBooks(transaction).organisation(),
    first === undefined ? undefined : lockMoneyOf(transaction, first),
    heldBefore(transaction, accounts, happened(event).currency),
  ]);
  const { currency: book, closedThrough } = organisation;
  const journal = post(event, {
    ...{ id: event.record.id, book, today, held: (account) => before.get(accountKey(account)) ?? NOTHING },
    ...(closedThrough ? { closedThrough } : {}),
    ...(rate ? { rate } : {}),
  });
  if (refused(journal)) throw new Refused(journal);
  await add(transaction, {
    journal: pack(journals, [{ ...journalRow(journal), said: saidOf(event) }]),
    postings: pack(postings, postingRows(journal)),
  });
}

function distinct(accounts: readonly Account[]): Account[] {
  return [...new Map(accounts.map((account) => [accountKey(account), account])).values()];
}

/** What accounts hold in a currency, as debits, by their keys; those that hold nothing are left out. */
async function heldBefore(
  transaction: Transaction,
  accounts: readonly Account[],
  currency: string,
): Promise<ReadonlyMap<string, Sum>> {
  if (accounts.length === 0) return new Map();
  const wanted = accounts.map((account, at) => ({ at, ...accountRow(account) }));
  const rows = await holding(transaction, { accounts: JSON.stringify(wanted), currency });
  return new Map(
    rows.flatMap(([at, amount, book]) => {
      const account = accounts[Number(at)];
      const sum = { amount: BigInt(String(amount)), book: BigInt(String(book)) };
      return account ? [[accountKey(account), sum] as const] : [];
    }),
  );
}
