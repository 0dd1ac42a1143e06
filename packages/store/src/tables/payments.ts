// Payments: money received. Written once and never altered.

import { METHODS } from '@colla/invoicing';
import { sql } from 'drizzle-orm';
import { check, foreignKey, index, pgTable, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { currencyCode, day, minorUnits, ofItsOrganisation, oneOf, organisationId } from '../columns.ts';
import { parties } from './parties.ts';

export const payments = pgTable(
  'payments',
  {
    organisationId: organisationId(),
    id: uuid('id').notNull(),
    party: uuid('party_id').notNull(),
    receivedOn: day('received_on').notNull(),
    amount: minorUnits('amount').notNull(),
    currency: currencyCode(),
    method: text('method', { enum: METHODS }).notNull(),
    reference: text('reference'),
    credit: minorUnits('credit').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.id] }),
    index('payments_received').on(table.organisationId, table.receivedOn, table.id),
    foreignKey({
      columns: [table.organisationId, table.party],
      foreignColumns: [parties.organisationId, parties.id],
    }),
    check('payments_amount', sql`${table.amount} > 0 and ${table.credit} between 0 and ${table.amount}`),
    oneOf('payments_methods', table.method, METHODS),
    ofItsOrganisation(table.organisationId),
  ],
);
