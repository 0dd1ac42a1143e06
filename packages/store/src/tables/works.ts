// The programme: works in their order, with the pianist's part of each.

import { PART_STATES, PERMISSIONS } from '@colla/engagements';
import { sql } from 'drizzle-orm';
import { boolean, check, foreignKey, integer, pgTable, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { day, ofItsOrganisation, oneOf, organisationId } from '../columns.ts';
import { engagements } from './engagements.ts';

export const works = pgTable(
  'works',
  {
    organisationId: organisationId(),
    engagementId: uuid('engagement_id').notNull(),
    id: uuid('id').notNull(),
    position: integer('position').notNull(),
    composer: text('composer').notNull(),
    title: text('title').notNull(),
    minutes: integer('minutes').notNull(),
    requested: boolean('requested').notNull(),
    difficulty: text('difficulty'),
    pages: integer('pages'),
    edition: text('part_edition'),
    key: text('part_key'),
    cuts: text('part_cuts'),
    state: text('part_state', { enum: PART_STATES }).notNull(),
    permission: text('part_permission', { enum: PERMISSIONS }).notNull(),
    receivedOn: day('part_received_on'),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.engagementId, table.id] }),
    foreignKey({
      columns: [table.organisationId, table.engagementId],
      foreignColumns: [engagements.organisationId, engagements.id],
    }),
    check('works_minutes', sql`${table.minutes} >= 0`),
    check('works_pages', sql`${table.pages} >= 1`),
    oneOf('works_part_states', table.state, PART_STATES),
    oneOf('works_part_permissions', table.permission, PERMISSIONS),
    ofItsOrganisation(table.organisationId),
  ],
);
