// Costs: money spent for an engagement, to be passed on as its terms say.

import { foreignKey, integer, pgTable, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { currencyCode, day, minorUnits, ofItsOrganisation, organisationId } from '../columns.ts';
import { engagements } from './engagements.ts';

export const costs = pgTable(
  'costs',
  {
    organisationId: organisationId(),
    engagementId: uuid('engagement_id').notNull(),
    id: uuid('id').notNull(),
    position: integer('position').notNull(),
    on: day('on_day').notNull(),
    what: text('what').notNull(),
    amount: minorUnits('amount').notNull(),
    currency: currencyCode(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.engagementId, table.id] }),
    foreignKey({
      columns: [table.organisationId, table.engagementId],
      foreignColumns: [engagements.organisationId, engagements.id],
    }),
    ofItsOrganisation(table.organisationId),
  ],
);
