// Journals: what one document or movement of money did to the books. Posted once, never altered. Each has the id of the
// record it posts.

import { EVENT_WORDS, type MoneyEvent } from '@colla/invoicing';
import { sql } from 'drizzle-orm';
import {
  bigint,
  check,
  foreignKey,
  index,
  jsonb,
  pgTable,
  primaryKey,
  text,
  unique,
  uuid,
} from 'drizzle-orm/pg-core';
import { currencyCode, day, ofItsOrganisation, oneOf, organisationId } from '../columns.ts';
import { organisations } from './organisations.ts';

/** The kinds of record that are posted. */
type Kind = MoneyEvent['kind'];
const KINDS: readonly string[] = [...Object.keys(EVENT_WORDS), 'undo' satisfies Kind];

export const journals = pgTable(
  'journals',
  {
    organisationId: organisationId(),
    id: uuid('id').notNull(),
    /** In the order in which they were posted. */
    entered: bigint('entered', { mode: 'number' }).generatedAlwaysAsIdentity().notNull(),
    on: day('on_day').notNull(),
    event: text('event').notNull(),
    source: text('source_kind').$type<Kind>().notNull(),
    /** The record that it undoes. */
    takesBackKind: text('takes_back_kind').$type<Kind>(),
    takesBack: uuid('takes_back'),
    currency: currencyCode(),
    book: currencyCode('book_currency'),
    /** Decimal text, as it was entered; the day it is of, and who said so. */
    rate: text('rate'),
    rateOn: day('rate_on'),
    rateSource: text('rate_source'),
    /** What was said of it that is no figure: how the money went, its reference, the reason. */
    said: jsonb('said').$type<Readonly<Record<string, string>>>().notNull().default({}),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.id] }),
    unique('journals_of_postings').on(table.organisationId, table.id, table.on, table.currency),
    unique('journals_taken_back_once').on(table.organisationId, table.takesBack),
    index('journals_day').on(table.organisationId, table.on, table.entered),
    foreignKey({ columns: [table.organisationId], foreignColumns: [organisations.id] }),
    foreignKey({
      name: 'journals_takes_back',
      columns: [table.organisationId, table.takesBack],
      foreignColumns: [table.organisationId, table.id],
    }),
    oneOf('journals_sources', table.source, KINDS),
    check(
      'journals_undo',
      sql`(${table.source} = 'undo') = (${table.takesBack} is not null) and (${table.takesBack} is null) = (${table.takesBackKind} is null)`,
    ),
    check(
      'journals_rate',
      sql`(${table.rate} is null) = (${table.rateOn} is null) and (${table.rate} is null) = (${table.rateSource} is null) and (${table.rate} is null or ${table.currency} <> ${table.book})`,
    ),
    ofItsOrganisation(table.organisationId),
  ],
);
