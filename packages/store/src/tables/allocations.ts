// Allocations: so much of a payment for an invoice.

import { sql } from 'drizzle-orm';
import { check, foreignKey, index, integer, pgTable, primaryKey, uuid } from 'drizzle-orm/pg-core';
import { currencyCode, minorUnits, ofItsOrganisation, organisationId } from '../columns.ts';
import { invoices } from './invoices.ts';
import { payments } from './payments.ts';

export const allocations = pgTable(
  'allocations',
  {
    organisationId: organisationId(),
    paymentId: uuid('payment_id').notNull(),
    invoice: uuid('invoice_id').notNull(),
    position: integer('position').notNull(),
    amount: minorUnits('amount').notNull(),
    currency: currencyCode(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.paymentId, table.invoice] }),
    index('allocations_invoice').on(table.organisationId, table.invoice),
    foreignKey({
      columns: [table.organisationId, table.paymentId],
      foreignColumns: [payments.organisationId, payments.id],
    }),
    foreignKey({
      columns: [table.organisationId, table.invoice],
      foreignColumns: [invoices.organisationId, invoices.id],
    }),
    check('allocations_amount', sql`${table.amount} > 0`),
    ofItsOrganisation(table.organisationId),
  ],
);
