// Legs: journeys made for an engagement.

import { DISTANCE_UNITS } from '@colla/travel';
import { sql } from 'drizzle-orm';
import { check, foreignKey, integer, pgTable, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { day, ofItsOrganisation, oneOf, organisationId } from '../columns.ts';
import { engagements } from './engagements.ts';

export const legs = pgTable(
  'legs',
  {
    organisationId: organisationId(),
    engagementId: uuid('engagement_id').notNull(),
    id: uuid('id').notNull(),
    position: integer('position').notNull(),
    on: day('on_day').notNull(),
    from: text('from_place').notNull(),
    to: text('to_place').notNull(),
    /** thousandths of the unit */
    thousandths: integer('distance_thousandths').notNull(),
    unit: text('distance_unit', { enum: DISTANCE_UNITS }).notNull(),
    minutes: integer('minutes').notNull(),
    purpose: text('purpose').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.engagementId, table.id] }),
    foreignKey({
      columns: [table.organisationId, table.engagementId],
      foreignColumns: [engagements.organisationId, engagements.id],
    }),
    check('legs_distance', sql`${table.thousandths} >= 0 and ${table.minutes} >= 0`),
    oneOf('legs_distance_unit', table.unit, DISTANCE_UNITS),
    ofItsOrganisation(table.organisationId),
  ],
);
