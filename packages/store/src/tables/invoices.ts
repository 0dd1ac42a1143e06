// Invoices: issued once, numbered, never altered. The names and addresses are those of the day of issue.

import { sql } from 'drizzle-orm';
import {
  check,
  foreignKey,
  index,
  integer,
  pgTable,
  primaryKey,
  text,
  unique,
  uuid,
} from 'drizzle-orm/pg-core';
import { currencyCode, day, minorUnits, ofItsOrganisation, organisationId } from '../columns.ts';
import { engagements } from './engagements.ts';
import { parties } from './parties.ts';

export const invoices = pgTable(
  'invoices',
  {
    organisationId: organisationId(),
    id: uuid('id').notNull(),
    series: text('series').notNull(),
    ordinal: integer('ordinal').notNull(),
    number: text('number').notNull(),
    engagement: uuid('engagement_id').notNull(),
    title: text('title').notNull(),
    currency: currencyCode(),
    payer: text('payer').notNull(),
    fromName: text('from_name').notNull(),
    fromAddress: text('from_address').array().notNull(),
    fromReference: text('from_reference'),
    fromTaxNumber: text('from_tax_number'),
    toParty: uuid('to_party').notNull(),
    toName: text('to_name').notNull(),
    toAddress: text('to_address').array().notNull(),
    toReference: text('to_reference'),
    toTaxNumber: text('to_tax_number'),
    payTo: text('pay_to').array().notNull(),
    net: minorUnits('net').notNull(),
    tax: minorUnits('tax').notNull(),
    total: minorUnits('total').notNull(),
    terms: text('terms'),
    note: text('note'),
    issuedOn: day('issued_on').notNull(),
    dueOn: day('due_on').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.id] }),
    unique('invoices_ordinal').on(table.organisationId, table.series, table.ordinal),
    unique('invoices_number').on(table.organisationId, table.number),
    index('invoices_engagement').on(table.organisationId, table.engagement),
    index('invoices_issued').on(table.organisationId, table.issuedOn, table.id),
    foreignKey({
      columns: [table.organisationId, table.engagement],
      foreignColumns: [engagements.organisationId, engagements.id],
    }),
    foreignKey({
      columns: [table.organisationId, table.toParty],
      foreignColumns: [parties.organisationId, parties.id],
    }),
    check('invoices_ordinal_from_one', sql`${table.ordinal} >= 1`),
    check('invoices_due_once_issued', sql`${table.dueOn} >= ${table.issuedOn}`),
    check('invoices_total', sql`${table.total} > 0 and ${table.net} + ${table.tax} = ${table.total}`),
    ofItsOrganisation(table.organisationId),
  ],
);
