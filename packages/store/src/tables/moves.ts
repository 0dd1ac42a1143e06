// Moves: an agreed call that somebody wished at another time, and where it stood before.

import { sql } from 'drizzle-orm';
import { check, foreignKey, integer, pgTable, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import { instant, ofItsOrganisation, oneOf, organisationId, zoneName } from '../columns.ts';
import { calls } from './calls.ts';

export const moves = pgTable(
  'moves',
  {
    organisationId: organisationId(),
    engagementId: uuid('engagement_id').notNull(),
    position: integer('position').notNull(),
    call: uuid('call_id').notNull(),
    startedAt: instant('started_at').notNull(),
    endedAt: instant('ended_at').notNull(),
    /** Of the place where it stood. */
    zone: zoneName('zone').notNull(),
    /** When word came that it moves. */
    wordAt: instant('word_at').notNull(),
    wordZone: zoneName('word_zone').notNull(),
    by: text('moved_by', { enum: ['payer', 'pianist'] }).notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.engagementId, table.position] }),
    foreignKey({
      name: 'moves_call',
      columns: [table.organisationId, table.engagementId, table.call],
      foreignColumns: [calls.organisationId, calls.engagementId, calls.id],
    }),
    check('moves_end_after_start', sql`${table.endedAt} > ${table.startedAt}`),
    oneOf('moves_moved_by', table.by, ['payer', 'pianist']),
    ofItsOrganisation(table.organisationId),
  ],
);
