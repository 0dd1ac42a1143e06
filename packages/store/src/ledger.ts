// The ledger as it is read: postings, balances summed by the database, and the journal of a record.

import type { Balance, Posted, Which } from '@colla/ledger';
import { spoken } from '@colla/ledger';
import { and, eq, type SQL, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/pg-core';
import type { Books, KeptJournal } from './books.ts';
import { isId, paging } from './page.ts';
import { enter, lockMoneyOf } from './posting.ts';
import { accountOf, journalOf, postedOf } from './posting-rows.ts';
import { packed, packedRows, unpack, unpackRows } from './rows.ts';
import { type Statement, statement, type Values } from './statement.ts';
import { journals } from './tables/journals.ts';
import { postings } from './tables/postings.ts';
import type { Transaction } from './transaction.ts';

/** How each thing asked for narrows the postings down; as `fits` of the ledger has it. */
const NARROWING: Readonly<Record<keyof Which, SQL>> = {
  purpose: sql`${postings.purpose} = ${sql.placeholder('purpose')}`,
  kind: sql`${postings.kind} = ${sql.placeholder('kind')}`,
  party: sql`coalesce(${postings.party}, ${postings.aboutParty}) = ${sql.placeholder('party')}`,
  invoice: sql`${postings.invoice} = ${sql.placeholder('invoice')}`,
  engagement: sql`case when ${postings.party} is null then ${postings.aboutEngagement} else ${postings.engagement} end
    = ${sql.placeholder('engagement')}`,
  currency: sql`${postings.currency} = ${sql.placeholder('currency')}`,
  source: sql`${postings.journalId} = ${sql.placeholder('source')}`,
  asAt: sql`${postings.on} <= ${sql.placeholder('asAt')}::text::date`,
};

const ofThem = and(
  eq(journals.organisationId, postings.organisationId),
  eq(journals.id, postings.journalId),
) as SQL;
const postingsAsked = asking(
  (where) => sql`select ${packed(journals)}, ${packed(postings)}
    from ${postings} join ${journals} on ${ofThem} where ${where}
    order by ${postings.on}, ${journals.entered}, ${postings.position}`,
);
const account = [
  postings.purpose,
  postings.party,
  postings.invoice,
  postings.engagement,
  postings.kind,
  postings.tax,
];
const accounts = sql.join(account, sql`, `);
const balancesAsked = asking(
  (
    where,
  ) => sql`select ${postings.currency}, sum(${postings.amount})::text, sum(${postings.book})::text, ${accounts}
    from ${postings} where ${where} group by ${postings.currency}, ${accounts}
    having sum(${postings.amount}) <> 0 or sum(${postings.book}) <> 0
    order by ${postings.currency}, ${accounts}`,
);
const anything = statement(sql`select 1 from ${journals} limit 1`);
const other = alias(journals, 'other');
const takenBack = sql`exists (select from ${journals} as ${other} where ${eq(other.takesBack, journals.id)})::text`;
const whole = sql`${packed(journals)}, ${packedRows(postings, ofThem, sql`${postings.position}`)}, ${takenBack}`;
const byId = statement(sql`select ${whole} from ${journals} where ${eq(journals.id, sql.placeholder('id'))}`);
const all = listing('journals', sql`true`);
const ofInvoice = listing('journals of an invoice', touching(eq(postings.invoice, sql.placeholder('of'))));
const ofParty = listing(
  'journals of a party',
  touching(sql`coalesce(${postings.party}, ${postings.aboutParty}) = ${sql.placeholder('of')}`),
);
const ofEngagement = listing(
  'journals of an engagement',
  touching(
    sql`(${postings.engagement} = ${sql.placeholder('of')} or ${postings.aboutEngagement} = ${sql.placeholder('of')})`,
  ),
);

export function ledgerBooks(
  transaction: Transaction,
): Pick<Books, 'begun' | 'posted' | 'balances' | 'journal' | 'journals' | 'enter' | 'lockMoneyOf'> {
  return {
    begun: async () => (await anything(transaction)).length > 0,
    async posted(which) {
      const rows = await postingsAsked(transaction, which);
      return rows.map(
        ([journal, posting]): Posted => postedOf(unpack(journals, journal), unpack(postings, posting)),
      );
    },
    async balances(which) {
      return (await balancesAsked(transaction, which)).map(balanceOf);
    },
    async journal(id) {
      const [row] = isId(id) ? await byId(transaction, { id }) : [];
      return row && keptJournal(row);
    },
    async journals({ invoice, party, engagement }, page) {
      if (invoice !== undefined) return ofInvoice(transaction, page, { of: invoice });
      if (party !== undefined) return ofParty(transaction, page, { of: party });
      if (engagement !== undefined) return ofEngagement(transaction, page, { of: engagement });
      return all(transaction, page);
    },
    enter: (event, entering) => enter(transaction, event, entering),
    lockMoneyOf: async (party) => {
      if (isId(party)) await lockMoneyOf(transaction, party);
    },
  };
}

/** Journals of which a posting is of something. */
function touching(which: SQL): SQL {
  return sql`${journals.id} in (select ${postings.journalId} from ${postings} where ${which})`;
}

/** The latest first. */
function listing(name: string, where: SQL) {
  return paging({
    ...{ name, where, by: 'day', newestFirst: true },
    order: [sql`${journals.on}`, sql`${journals.id}`],
    select: whole,
    from: sql`${journals}`,
    read: keptJournal,
  });
}

function keptJournal([json, lines, takenBack]: unknown[]): KeptJournal {
  const row = unpack(journals, json);
  return {
    journal: journalOf(row, unpackRows(postings, lines)),
    said: row.said,
    takenBack: takenBack === 'true',
  };
}

type Asked = (transaction: Transaction, which: Which) => Promise<unknown[][]>;

/** One statement for each set of things that are asked for, made when it is first wanted: each finds its index. */
function asking(select: (where: SQL) => SQL): Asked {
  const made = new Map<string, Statement>();
  return (transaction, which) => {
    const keys = (Object.keys(NARROWING) as (keyof Which)[]).filter((key) => which[key] !== undefined);
    const where = and(...keys.map((key) => NARROWING[key])) ?? sql`true`;
    const known = made.get(keys.join()) ?? statement(select(where));
    made.set(keys.join(), known);
    return known(transaction, valuesOf(which));
  };
}

function valuesOf({ asAt, ...which }: Which): Values {
  return { ...which, ...(asAt ? { asAt: asAt.toString() } : {}) };
}

function balanceOf(row: unknown[]): Balance {
  const [currency, amount, book, ...named] = row;
  const [purpose, party, invoice, engagement, kind, tax] = named as (string | null)[];
  const of = accountOf({ purpose, party, invoice, engagement, kind, tax } as Parameters<typeof accountOf>[0]);
  const sum = (text: unknown) => spoken(of, BigInt(String(text)));
  return { account: of, currency: currency as Balance['currency'], amount: sum(amount), book: sum(book) };
}
