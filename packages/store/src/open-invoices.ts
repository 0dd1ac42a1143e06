// Invoices on which something is owed, by the ledger: what money is set against, and what ages.

import { Temporal } from '@colla/calendar';
import type { OpenInvoice } from '@colla/invoicing';
import { and, eq, type SQL, sql } from 'drizzle-orm';
import type { Books } from './books.ts';
import { isId } from './page.ts';
import { type Statement, statement } from './statement.ts';
import { invoices } from './tables/invoices.ts';
import { postings } from './tables/postings.ts';
import type { Transaction } from './transaction.ts';

const ofAll = open(sql`true`);
const ofParty = open(eq(invoices.toParty, sql.placeholder('party')));

export function openInvoiceBooks(transaction: Transaction): Pick<Books, 'openInvoices'> {
  return {
    async openInvoices({ party, asAt }) {
      const day = asAt?.toString() ?? 'infinity';
      if (party === undefined) return (await ofAll(transaction, { day })).map(openInvoice);
      return isId(party) ? (await ofParty(transaction, { day, party })).map(openInvoice) : [];
    },
  };
}

function open(which: SQL): Statement {
  const owed = and(
    eq(postings.organisationId, invoices.organisationId),
    eq(postings.invoice, invoices.id),
    sql`${postings.on} <= ${sql.placeholder('day')}::text::date`,
  );
  return statement(sql`select ${invoices.id}::text, ${invoices.number}, sum(${postings.amount})::text,
      ${invoices.currency}, ${invoices.toParty}::text, ${invoices.engagement}::text,
      ${invoices.issuedOn}::text, ${invoices.dueOn}::text
    from ${invoices} join ${postings} on ${owed} where ${which}
    group by ${invoices.organisationId}, ${invoices.id} having sum(${postings.amount}) <> 0
    order by ${invoices.issuedOn}, ${invoices.series}, ${invoices.ordinal}`);
}

function openInvoice(row: unknown[]): OpenInvoice {
  const [invoice, number, owed, currency, party, engagement, issuedOn, dueOn] = row.map(String) as Texts;
  return {
    ...{ invoice, number, party, engagement, owed: BigInt(owed) },
    currency: currency as OpenInvoice['currency'],
    issuedOn: Temporal.PlainDate.from(issuedOn),
    dueOn: Temporal.PlainDate.from(dueOn),
  };
}

type Texts = [string, string, string, string, string, string, string, string];
