// Agreements: what was accepted, frozen. Written once and never altered.

import { sql } from 'drizzle-orm';
import {
  check,
  date,
  foreignKey,
  integer,
  pgTable,
  primaryKey,
  text,
  unique,
  uuid,
} from 'drizzle-orm/pg-core';
import {
  agreedThen,
  instant,
  ofItsOrganisation,
  organisationId,
  sentences,
  tariff,
  terms,
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
    agreed: agreedThen('calls').notNull(),
    holidays: date('holidays', { mode: 'string' }).array().notNull(),
    terms: terms('terms').notNull().default([]),
    /** Engagements of the same payer agreed before it in its season; null where they were not counted yet. */
    soFar: integer('so_far'),
    agreedAt: instant('agreed_at').notNull(),
    agreedZone: zoneName('agreed_zone').notNull(),
    acceptedBy: text('accepted_by').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.id] }),
    check('agreements_so_far', sql`${table.soFar} >= 0`),
    unique('agreements_engagement').on(table.organisationId, table.engagementId),
    foreignKey({
      columns: [table.organisationId, table.engagementId],
      foreignColumns: [engagements.organisationId, engagements.id],
    }),
    ofItsOrganisation(table.organisationId),
  ],
);
