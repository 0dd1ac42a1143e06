// Tariffs and their versions. A version is written once and never altered.

import { sql } from 'drizzle-orm';
import { check, foreignKey, index, integer, pgTable, primaryKey, uuid } from 'drizzle-orm/pg-core';
import { filed, ofItsOrganisation, organisationId, tariff } from '../columns.ts';
import { organisations } from './organisations.ts';

export const tariffs = pgTable(
  'tariffs',
  {
    organisationId: organisationId(),
    id: uuid('id').notNull(),
    /** The newest version's name as lists are sorted by it. */
    filedAs: filed('filed_as').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.id] }),
    index('tariffs_filed').on(table.organisationId, table.filedAs, table.id),
    foreignKey({ columns: [table.organisationId], foreignColumns: [organisations.id] }),
    ofItsOrganisation(table.organisationId),
  ],
);

export const tariffVersions = pgTable(
  'tariff_versions',
  {
    organisationId: organisationId(),
    tariffId: uuid('tariff_id').notNull(),
    version: integer('version').notNull(),
    tariff: tariff('tariff').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.tariffId, table.version] }),
    foreignKey({
      columns: [table.organisationId, table.tariffId],
      foreignColumns: [tariffs.organisationId, tariffs.id],
    }),
    check('tariff_versions_version', sql`${table.version} >= 1`),
    check('tariff_versions_agree', sql`(${table.tariff} ->> 'version')::integer = ${table.version}`),
    ofItsOrganisation(table.organisationId),
  ],
);
