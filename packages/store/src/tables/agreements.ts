// Agreements: what was accepted, frozen. Written once and never altered.

import { date, foreignKey, pgTable, primaryKey, text, unique, uuid } from 'drizzle-orm/pg-core';
import {
  agreedCalls,
  instant,
  ofItsOrganisation,
  organisationId,
  sentences,
  tariff,
  zoneName,
} from '../columns.ts';
import { engagements } from './engagements.ts';

export const agreements = pgTable(
  'agreements',
  {
    organisationId: organisationId(),
    id: uuid('id').notNull(),
    engagementId: uuid('engagement_id').notNull(),
    tariff: tariff('tariff').notNull(),
    sentences: sentences('sentences').notNull(),
    calls: agreedCalls('calls').notNull(),
    holidays: date('holidays', { mode: 'string' }).array().notNull(),
    agreedAt: instant('agreed_at').notNull(),
    agreedZone: zoneName('agreed_zone').notNull(),
    acceptedBy: text('accepted_by').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.id] }),
    unique('agreements_engagement').on(table.organisationId, table.engagementId),
    foreignKey({
      columns: [table.organisationId, table.engagementId],
      foreignColumns: [engagements.organisationId, engagements.id],
    }),
    ofItsOrganisation(table.organisationId),
  ],
);
