// Whoever keeps the books. Its own row is the only one it sees here.

import type { Organisation } from '@colla/engagements';
import { sql } from 'drizzle-orm';
import { bigint, check, date, integer, pgTable, text, uuid } from 'drizzle-orm/pg-core';
import { atTheDoor, currencyCode, day, ofItsOrganisation, oneOf, terms, zoneName } from '../columns.ts';

export const organisations = pgTable(
  'organisations',
  {
    id: uuid('id').primaryKey(),
    /** In the order in which they were added. */
    entered: bigint('entered', { mode: 'number' }).generatedAlwaysAsIdentity().notNull(),
    name: text('name').notNull(),
    address: text('address').array().notNull(),
    email: text('email'),
    taxNumber: text('tax_number'),
    payTo: text('pay_to').array().notNull(),
    currency: currencyCode(),
    zone: zoneName('zone').notNull(),
    locale: text('locale').notNull(),
    paper: text('paper').$type<Organisation['paper']>().notNull(),
    /** minutes */
    weeklyLimit: integer('weekly_limit').notNull(),
    holidays: date('holidays', { mode: 'string' }).array().notNull(),
    terms: terms('terms').notNull().default([]),
    /** The last day of the years that are closed. */
    closedThrough: day('closed_through'),
  },
  (table) => [
    check('organisations_weekly_limit', sql`${table.weeklyLimit} >= 0`),
    oneOf('organisations_paper', table.paper, ['A4', 'Letter']),
    ofItsOrganisation(table.id),
    atTheDoor(),
  ],
);
