// Seasons: named spans of days by which work and money are summed.

import { sql } from 'drizzle-orm';
import { check, foreignKey, index, pgTable, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { day, ofItsOrganisation, organisationId } from '../columns.ts';
import { organisations } from './organisations.ts';

export const seasons = pgTable(
  'seasons',
  {
    organisationId: organisationId(),
    id: uuid('id').notNull(),
    name: text('name').notNull(),
    from: day('from_day').notNull(),
    to: day('to_day').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.id] }),
    index('seasons_from').on(table.organisationId, table.from, table.id),
    foreignKey({ columns: [table.organisationId], foreignColumns: [organisations.id] }),
    check('seasons_end_after_start', sql`${table.to} >= ${table.from}`),
    ofItsOrganisation(table.organisationId),
  ],
);
