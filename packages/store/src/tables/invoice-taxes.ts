// The taxes of an invoice, as issued.

import { CATEGORIES } from '@colla/rates';
import { sql } from 'drizzle-orm';
import {
  boolean,
  check,
  foreignKey,
  integer,
  numeric,
  pgTable,
  primaryKey,
  text,
  uuid,
} from 'drizzle-orm/pg-core';
import { currencyCode, minorUnits, ofItsOrganisation, organisationId } from '../columns.ts';
import { invoices } from './invoices.ts';

export const invoiceTaxes = pgTable(
  'invoice_taxes',
  {
    organisationId: organisationId(),
    invoiceId: uuid('invoice_id').notNull(),
    position: integer('position').notNull(),
    name: text('name').notNull(),
    /** Basis points, to the hundredth: 997.50 is 9.975 %. */
    rate: numeric('rate', { precision: 9, scale: 2, mode: 'number' }).notNull(),
    code: text('code').notNull(),
    /** Whether the prices have it inside them, or it comes on top. */
    inside: boolean('inside').notNull(),
    base: minorUnits('base').notNull(),
    amount: minorUnits('amount').notNull(),
    clause: text('clause'),
    wording: text('wording'),
    /** The kinds of line it is not on. */
    not: text('not_on', { enum: CATEGORIES }).array(),
    arithmetic: text('arithmetic'),
    currency: currencyCode(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.invoiceId, table.position] }),
    foreignKey({
      columns: [table.organisationId, table.invoiceId],
      foreignColumns: [invoices.organisationId, invoices.id],
    }),
    check('invoice_taxes_rate', sql`${table.rate} >= 0`),
    ofItsOrganisation(table.organisationId),
  ],
);
