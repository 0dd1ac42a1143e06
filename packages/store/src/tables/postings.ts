// Postings: the two sides of each transfer of a journal, credit before debit. Debits are above nothing.

import { INCOME_KINDS, PURPOSES, type Purpose } from '@colla/ledger';
import { sql } from 'drizzle-orm';
import { check, foreignKey, index, integer, pgTable, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { currencyCode, day, minorUnits, ofItsOrganisation, oneOf, organisationId } from '../columns.ts';
import { engagements } from './engagements.ts';
import { invoices } from './invoices.ts';
import { journals } from './journals.ts';
import { parties } from './parties.ts';

export const postings = pgTable(
  'postings',
  {
    organisationId: organisationId(),
    journalId: uuid('journal_id').notNull(),
    position: integer('position').notNull(),
    /** The journal's day and currency: sums need no other table. */
    on: day('on_day').notNull(),
    currency: currencyCode(),
    purpose: text('purpose').$type<Purpose>().notNull(),
    /** What else the account names, by its purpose. */
    party: uuid('party_id'),
    invoice: uuid('invoice_id'),
    engagement: uuid('engagement_id'),
    kind: text('kind', { enum: INCOME_KINDS }),
    tax: text('tax'),
    amount: minorUnits('amount').notNull(),
    book: minorUnits('book').notNull(),
    /** Whose business it was and what for, where the account does not say so itself. */
    aboutParty: uuid('about_party'),
    aboutEngagement: uuid('about_engagement'),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.journalId, table.position] }),
    index('postings_invoice').on(table.organisationId, table.invoice),
    index('postings_engagement').on(table.organisationId, table.engagement),
    index('postings_party').on(
      table.organisationId,
      sql`coalesce(${table.party}, ${table.aboutParty})`,
      table.on,
    ),
    index('postings_purpose').on(table.organisationId, table.purpose, table.on),
    foreignKey({
      name: 'postings_journal',
      columns: [table.organisationId, table.journalId, table.on, table.currency],
      foreignColumns: [journals.organisationId, journals.id, journals.on, journals.currency],
    }),
    foreignKey({
      name: 'postings_of_party',
      columns: [table.organisationId, table.party],
      foreignColumns: [parties.organisationId, parties.id],
    }),
    foreignKey({
      name: 'postings_of_invoice',
      columns: [table.organisationId, table.invoice],
      foreignColumns: [invoices.organisationId, invoices.id],
    }),
    foreignKey({
      name: 'postings_of_engagement',
      columns: [table.organisationId, table.engagement],
      foreignColumns: [engagements.organisationId, engagements.id],
    }),
    oneOf('postings_purposes', table.purpose, PURPOSES),
    check('postings_something', sql`${table.amount} <> 0 or ${table.book} <> 0`),
    check(
      'postings_account',
      sql`(${table.party} is not null) = (${table.purpose} in ('receivable', 'deposits held', 'credit held'))
        and (${table.invoice} is not null) = (${table.purpose} = 'receivable')
        and (${table.engagement} is not null) = (${table.purpose} = 'deposits held')
        and (${table.kind} is not null) = (${table.purpose} = 'income')
        and (${table.tax} is not null) = (${table.purpose} = 'tax collected')`,
    ),
    ofItsOrganisation(table.organisationId),
  ],
);
