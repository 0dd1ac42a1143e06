// Soloists, parents, institutions, payers: anyone outside the organisation.

import { foreignKey, index, pgTable, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { filed, ofItsOrganisation, organisationId } from '../columns.ts';
import { organisations } from './organisations.ts';

export const parties = pgTable(
  'parties',
  {
    organisationId: organisationId(),
    id: uuid('id').notNull(),
    name: text('name').notNull(),
    /** The name as lists are sorted by it. */
    filedAs: filed('filed_as').notNull(),
    address: text('address').array().notNull(),
    email: text('email'),
    reference: text('reference'),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.id] }),
    index('parties_filed').on(table.organisationId, table.filedAs, table.id),
    foreignKey({ columns: [table.organisationId], foreignColumns: [organisations.id] }),
    ofItsOrganisation(table.organisationId),
  ],
);
