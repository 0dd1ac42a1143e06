// Invoices: the next number of a series, what was issued, and what was paid on it.

import { type Asked, type Invoice, issue, type Named } from '@colla/invoicing';
import { eq, sql } from 'drizzle-orm';
import type { Books, KeptInvoice } from './books.ts';
import { idList, isId, paging } from './page.ts';
import { enter } from './posting.ts';
import { inserting, pack, packed, packedRows, present, type Row, unpack, unpackRows } from './rows.ts';
import { statement } from './statement.ts';
import { invoiceLines } from './tables/invoice-lines.ts';
import { invoiceTaxes } from './tables/invoice-taxes.ts';
import { invoices } from './tables/invoices.ts';
import { journals } from './tables/journals.ts';
import { postings } from './tables/postings.ts';
import { series } from './tables/series.ts';
import type { Transaction } from './transaction.ts';

const lines = packedRows(
  invoiceLines,
  eq(invoiceLines.invoiceId, invoices.id),
  sql`${invoiceLines.position}`,
);
const taxes = packedRows(
  invoiceTaxes,
  eq(invoiceTaxes.invoiceId, invoices.id),
  sql`${invoiceTaxes.position}`,
);
// What is owed on an invoice is the balance of its receivable; the rest of its total is settled.
const paid = sql`(select (${invoices.total} - coalesce(sum(${postings.amount}), 0))::text from ${postings}
  where ${eq(postings.invoice, invoices.id)})`;
const whole = sql`${packed(invoices)}, ${lines}, ${taxes}, ${paid}`;

const byId = statement(sql`select ${whole} from ${invoices} where ${eq(invoices.id, sql.placeholder('id'))}`);
const ofEngagements = statement(sql`select ${whole} from ${invoices}
  where ${invoices.engagement} = any(${sql.placeholder('engagements')}::text::uuid[])
  order by ${invoices.issuedOn}, ${invoices.series}, ${invoices.ordinal}`);
const unposted = statement(sql`select ${whole} from ${invoices}
  where not exists (select from ${journals} where ${eq(journals.id, invoices.id)})
  order by ${invoices.issuedOn}, ${invoices.series}, ${invoices.ordinal}`);
const latestFirst = paging({
  name: 'invoices',
  by: 'day',
  newestFirst: true,
  order: [sql`${invoices.issuedOn}`, sql`${invoices.id}`],
  select: whole,
  from: sql`${invoices}`,
  read: keptInvoice,
});

const lock = statement(sql`select pg_advisory_xact_lock(hashtextextended(${invoices.toParty}::text, 0))::text
  from ${invoices} where ${eq(invoices.id, sql.placeholder('id'))}`);
const nextOrdinal =
  statement(sql`insert into ${series} (series, last) values (${sql.placeholder('series')}, 1)
  on conflict (organisation_id, series) do update set last = ${series.last} + 1 returning last`);
// One statement: whoever else wants a number of the series is waiting for this one.
const add = statement(sql`with invoice as (${inserting(invoices, 'invoice')}),
  lines as (${inserting(invoiceLines, 'lines')}), taxes as (${inserting(invoiceTaxes, 'taxes')}) select 1`);

export function invoiceBooks(
  transaction: Transaction,
): Pick<Books, 'invoice' | 'invoices' | 'invoicesOf' | 'askedOf' | 'issueInvoice' | 'lockInvoice'> {
  const one = async (id: string) => {
    const [row] = await byId(transaction, { id });
    return row && keptInvoice(row);
  };
  const of = async (ids: readonly string[]) => {
    const found = await ofEngagements(transaction, { engagements: idList(ids) });
    return found.map(keptInvoice);
  };
  return {
    invoice: async (id) => (isId(id) ? one(id) : undefined),
    invoices: (page) => latestFirst(transaction, page),
    invoicesOf: of,
    askedOf: async (engagement) => (await of([engagement])).map(({ invoice }) => asked(invoice)),
    async lockInvoice(id) {
      if (!isId(id)) return undefined;
      const [, kept] = await Promise.all([lock(transaction, { id }), one(id)]);
      return kept;
    },
    async issueInvoice(draft, { id, series }, entering) {
      const [row] = await nextOrdinal(transaction, { series });
      const invoice = issue(draft, { id, series, ordinal: Number(row?.[0]) });
      await keep(transaction, invoice);
      await enter(transaction, { kind: 'invoice', record: invoice }, entering);
      return invoice;
    },
  };
}

/** Invoices that no journal is of, as they were issued. */
export async function unpostedInvoices(transaction: Transaction): Promise<Invoice[]> {
  return (await unposted(transaction)).map((row) => keptInvoice(row).invoice);
}

async function keep(transaction: Transaction, invoice: Invoice): Promise<void> {
  const { id: invoiceId, currency, lines, taxes } = invoice;
  const of = (position: number) => ({ invoiceId, position, currency });
  const lineRows = lines.map(({ quantity, calls, ...line }, position) => ({
    ...of(position),
    ...line,
    ...quantity,
    calls: [...calls],
  }));
  const taxRows = taxes.map(({ not, ...tax }, position) => ({
    ...of(position),
    ...tax,
    not: not ? [...not] : null,
  }));
  await add(transaction, {
    invoice: pack(invoices, [toRow(invoice)]),
    lines: pack(invoiceLines, lineRows),
    taxes: pack(invoiceTaxes, taxRows),
  });
}

function toRow({ from, to, lines: _, taxes: __, payTo, ...invoice }: Invoice) {
  return {
    ...invoice,
    payTo: [...payTo],
    fromName: from.name,
    fromAddress: [...from.address],
    fromReference: from.reference ?? null,
    fromTaxNumber: from.taxNumber ?? null,
    toParty: to.party,
    toName: to.name,
    toAddress: [...to.address],
    toReference: to.reference ?? null,
    toTaxNumber: to.taxNumber ?? null,
  };
}

function keptInvoice([json, lines, taxes, paid]: unknown[]): KeptInvoice {
  const row = unpack(invoices, json);
  const invoice = {
    ...fromRow(row),
    lines: unpackRows(invoiceLines, lines).map(line),
    taxes: unpackRows(invoiceTaxes, taxes).map(({ invoiceId: _, position: __, currency: ___, ...tax }) =>
      present(tax),
    ),
  };
  return { invoice, paid: BigInt(String(paid)) };
}

function fromRow(row: Row<typeof invoices>): Omit<Invoice, 'lines' | 'taxes'> {
  const { fromName, fromAddress, fromReference, fromTaxNumber, ...rest } = row;
  const { toParty, toName, toAddress, toReference, toTaxNumber, ...invoice } = rest;
  return {
    ...present(invoice),
    from: named(fromName, fromAddress, fromReference, fromTaxNumber),
    to: { ...named(toName, toAddress, toReference, toTaxNumber), party: toParty },
  };
}

function named(name: string, address: string[], reference: string | null, taxNumber: string | null): Named {
  return present({ name, address, reference, taxNumber });
}

function line(row: Row<typeof invoiceLines>): Invoice['lines'][number] {
  const { invoiceId: _, position: __, currency: ___, count, of, ...line } = row;
  return { ...present(line), quantity: { count, of } };
}

function asked({ payer, lines, taxes }: Invoice): Asked {
  return { payer, lines, taxes };
}
