// Who pays for an engagement, by the roles its tariff names.

import { foreignKey, index, integer, pgTable, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { ofItsOrganisation, organisationId } from '../columns.ts';
import { engagements } from './engagements.ts';
import { parties } from './parties.ts';

export const payers = pgTable(
  'payers',
  {
    organisationId: organisationId(),
    engagementId: uuid('engagement_id').notNull(),
    role: text('role').notNull(),
    position: integer('position').notNull(),
    partyId: uuid('party_id').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.engagementId, table.role] }),
    index('payers_party').on(table.organisationId, table.partyId),
    foreignKey({
      columns: [table.organisationId, table.engagementId],
      foreignColumns: [engagements.organisationId, engagements.id],
    }),
    foreignKey({
      columns: [table.organisationId, table.partyId],
      foreignColumns: [parties.organisationId, parties.id],
    }),
    ofItsOrganisation(table.organisationId),
  ],
);
