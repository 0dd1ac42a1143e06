// Calls: planned at a place, and how each stands.

import { CALL_KINDS, REASONS, type Standing } from '@colla/hours';
import { sql } from 'drizzle-orm';
import {
  boolean,
  check,
  foreignKey,
  index,
  integer,
  pgTable,
  primaryKey,
  text,
  uuid,
} from 'drizzle-orm/pg-core';
import { day, instant, ofItsOrganisation, oneOf, organisationId, zoneBeside, zoneName } from '../columns.ts';
import { engagements } from './engagements.ts';

const STANDINGS = ['held', 'agreed', 'played', 'cancelled', 'missed'] as const satisfies Standing['is'][];

export const calls = pgTable(
  'calls',
  {
    organisationId: organisationId(),
    engagementId: uuid('engagement_id').notNull(),
    id: uuid('id').notNull(),
    position: integer('position').notNull(),
    kind: text('kind', { enum: CALL_KINDS }).notNull(),
    label: text('label'),
    place: text('place').notNull(),
    startsAt: instant('starts_at').notNull(),
    endsAt: instant('ends_at').notNull(),
    zone: zoneName('zone').notNull(),
    /** The day it begins on at its place, by its real times where it was played; worked out by the domain. */
    on: day('on_day').notNull(),

    standing: text('standing', { enum: STANDINGS }).notNull(),
    onlyIf: text('only_if'),
    lapsesAt: instant('lapses_at'),
    lapsesZone: zoneName('lapses_zone'),
    playedFrom: instant('played_from'),
    playedUntil: instant('played_until'),
    playedZone: zoneName('played_zone'),
    /** When word came that it will not take place. */
    wordAt: instant('word_at'),
    wordZone: zoneName('word_zone'),
    by: text('let_fall_by', { enum: ['payer', 'pianist'] }),
    reason: text('reason', { enum: REASONS }),
    wasAgreed: boolean('was_agreed'),

    /** When and why the pianist played it though what was to be paid first was not. */
    liftedAt: instant('lifted_at'),
    liftedZone: zoneName('lifted_zone'),
    liftedReason: text('lifted_reason'),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.engagementId, table.id] }),
    index('calls_on_day').on(table.organisationId, table.on),
    foreignKey({
      columns: [table.organisationId, table.engagementId],
      foreignColumns: [engagements.organisationId, engagements.id],
    }),
    oneOf('calls_kinds', table.kind, CALL_KINDS),
    check('calls_end_after_start', sql`${table.endsAt} > ${table.startsAt}`),
    check('calls_played_end_after_start', sql`${table.playedUntil} > ${table.playedFrom}`),
    oneOf('calls_standings', table.standing, STANDINGS),
    check(
      'calls_held',
      sql`${table.standing} = 'held' or (${table.standing} = 'cancelled' and not ${table.wasAgreed})
        or (${table.lapsesAt} is null and ${table.onlyIf} is null)`,
    ),
    check(
      'calls_played',
      sql`(${table.standing} = 'played') = (${table.playedFrom} is not null)
        and (${table.playedFrom} is null) = (${table.playedUntil} is null)`,
    ),
    check(
      'calls_cancelled',
      sql`(${table.standing} = 'cancelled') = (${table.wordAt} is not null)
        and (${table.wordAt} is null) = (${table.wasAgreed} is null)`,
    ),
    check(
      'calls_fallen',
      sql`(${table.standing} in ('cancelled', 'missed')) = (${table.by} is not null)
        and (${table.by} is null) = (${table.reason} is null)`,
    ),
    oneOf('calls_let_fall_by', table.by, ['payer', 'pianist']),
    oneOf('calls_reason', table.reason, REASONS),
    check('calls_lifted', sql`(${table.liftedAt} is null) = (${table.liftedReason} is null)`),
    zoneBeside('calls_lifted_zone', table.liftedAt, table.liftedZone),
    zoneBeside('calls_lapses_zone', table.lapsesAt, table.lapsesZone),
    zoneBeside('calls_played_zone', table.playedFrom, table.playedZone),
    zoneBeside('calls_word_zone', table.wordAt, table.wordZone),
    ofItsOrganisation(table.organisationId),
  ],
);
