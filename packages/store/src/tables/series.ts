// The counter of each series of document numbers. It is counted up in the transaction that uses the number, so
// that a number not used is not lost.

import { sql } from 'drizzle-orm';
import { check, foreignKey, integer, pgTable, primaryKey, text } from 'drizzle-orm/pg-core';
import { ofItsOrganisation, organisationId } from '../columns.ts';
import { organisations } from './organisations.ts';

export const series = pgTable(
  'series',
  {
    organisationId: organisationId(),
    series: text('series').notNull(),
    last: integer('last').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.series] }),
    foreignKey({ columns: [table.organisationId], foreignColumns: [organisations.id] }),
    check('series_last', sql`${table.last} >= 1`),
    ofItsOrganisation(table.organisationId),
  ],
);
