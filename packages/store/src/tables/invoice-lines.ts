// The lines of an invoice, as issued.

import { CATEGORIES } from '@colla/rates';
import { sql } from 'drizzle-orm';
import { check, foreignKey, integer, pgTable, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import {
  currencyCode,
  day,
  minorUnits,
  ofItsOrganisation,
  oneOf,
  organisationId,
  usedFacts,
  wholeNumber,
} from '../columns.ts';
import { invoices } from './invoices.ts';

export const invoiceLines = pgTable(
  'invoice_lines',
  {
    organisationId: organisationId(),
    invoiceId: uuid('invoice_id').notNull(),
    position: integer('position').notNull(),
    key: text('key').notNull(),
    clause: text('clause').notNull(),
    category: text('category', { enum: CATEGORIES }).notNull(),
    what: text('what').notNull(),
    calls: uuid('calls').array().notNull(),
    /** The quantity as an exact fraction: `count` of `of`. */
    count: wholeNumber('quantity_count').notNull(),
    of: wholeNumber('quantity_of').notNull(),
    unit: text('unit').notNull(),
    rate: minorUnits('rate').notNull(),
    amount: minorUnits('amount').notNull(),
    currency: currencyCode(),
    facts: usedFacts('facts').notNull().default([]),
    arithmetic: text('arithmetic').notNull(),
    on: day('on_day'),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.invoiceId, table.position] }),
    foreignKey({
      columns: [table.organisationId, table.invoiceId],
      foreignColumns: [invoices.organisationId, invoices.id],
    }),
    check('invoice_lines_quantity', sql`${table.of} > 0`),
    oneOf('invoice_lines_categories', table.category, CATEGORIES),
    ofItsOrganisation(table.organisationId),
  ],
);
