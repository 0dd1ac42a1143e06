// Engagements: what each holds at every stage, what its stage adds, and what a list says of it.

import { STAGES } from '@colla/engagements';
import { REASONS, type Reason, type Who } from '@colla/hours';
import { sql } from 'drizzle-orm';
import { check, foreignKey, index, integer, pgTable, primaryKey, text, uuid } from 'drizzle-orm/pg-core';
import {
  currencyCode,
  instant,
  minutesByClause,
  ofItsOrganisation,
  oneOf,
  organisationId,
  tariff,
  zoneBeside,
  zoneName,
} from '../columns.ts';
import { organisations } from './organisations.ts';
import { parties } from './parties.ts';

export const engagements = pgTable(
  'engagements',
  {
    organisationId: organisationId(),
    id: uuid('id').notNull(),
    /** Grows with every save, so that two who change it at once cannot overwrite one another. */
    revision: integer('revision').notNull(),
    title: text('title').notNull(),
    stage: text('stage', { enum: STAGES }).notNull(),
    currency: currencyCode(),
    soloistParty: uuid('soloist_party'),
    institutionParty: uuid('institution_party'),
    level: text('soloist_level'),
    instrument: text('soloist_instrument'),
    study: text('soloist_study'),
    membership: text('soloist_membership'),
    sharers: integer('sharers').notNull(),
    pianistClass: text('pianist_class'),
    circumstances: text('circumstances').array().notNull(),
    /** Minutes that an entitlement has over from the engagement before, by its clause. */
    rolledOver: minutesByClause('rolled_over').notNull().default({}),
    note: text('note'),
    askedAt: instant('asked_at').notNull(),
    askedZone: zoneName('asked_zone').notNull(),

    quotedTariff: tariff('quoted_tariff'),
    quotedAt: instant('quoted_at'),
    quotedZone: zoneName('quoted_zone'),
    validUntil: instant('valid_until'),
    validZone: zoneName('valid_zone'),
    /** When it was settled, cancelled, declined, or lapsed. */
    endedAt: instant('ended_at'),
    endedZone: zoneName('ended_zone'),
    cancelledBy: text('cancelled_by').$type<Who>(),
    cancelledReason: text('cancelled_reason').$type<Reason>(),

    /** Worked out by the domain at each save, so that a list need not load it whole. */
    callCount: integer('call_count').notNull(),
    firstAt: instant('first_at'),
    firstZone: zoneName('first_zone'),
    lastAt: instant('last_at'),
    lastZone: zoneName('last_zone'),
    partsWanted: integer('parts_wanted').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.id] }),
    index('engagements_asked').on(table.organisationId, table.askedAt, table.id),
    index('engagements_stage').on(table.organisationId, table.stage, table.askedAt, table.id),
    foreignKey({ columns: [table.organisationId], foreignColumns: [organisations.id] }),
    foreignKey({
      columns: [table.organisationId, table.soloistParty],
      foreignColumns: [parties.organisationId, parties.id],
    }),
    foreignKey({
      columns: [table.organisationId, table.institutionParty],
      foreignColumns: [parties.organisationId, parties.id],
    }),
    oneOf('engagements_stages', table.stage, STAGES),
    check('engagements_sharers', sql`${table.sharers} >= 1`),
    check(
      'engagements_quoted',
      sql`case when ${table.stage} = 'quoted'
        then ${table.quotedTariff} is not null and ${table.quotedAt} is not null and ${table.validUntil} is not null
          and ${table.validUntil} > ${table.quotedAt}
        else ${table.quotedTariff} is null and ${table.quotedAt} is null and ${table.validUntil} is null end`,
    ),
    check(
      'engagements_ended',
      sql`(${table.stage} in ('settled', 'cancelled', 'declined', 'lapsed')) = (${table.endedAt} is not null)`,
    ),
    check(
      'engagements_cancelled',
      sql`case when ${table.stage} = 'cancelled'
        then ${table.cancelledBy} is not null and ${table.cancelledReason} is not null
        else ${table.cancelledBy} is null and ${table.cancelledReason} is null end`,
    ),
    oneOf('engagements_cancelled_by', table.cancelledBy, ['payer', 'pianist']),
    oneOf('engagements_cancelled_reason', table.cancelledReason, REASONS),
    zoneBeside('engagements_quoted_zone', table.quotedAt, table.quotedZone),
    zoneBeside('engagements_valid_zone', table.validUntil, table.validZone),
    zoneBeside('engagements_ended_zone', table.endedAt, table.endedZone),
    zoneBeside('engagements_first_zone', table.firstAt, table.firstZone),
    zoneBeside('engagements_last_zone', table.lastAt, table.lastZone),
    check('engagements_summary', sql`${table.callCount} >= 0 and ${table.partsWanted} >= 0`),
    ofItsOrganisation(table.organisationId),
  ],
);
