// Answers to requests that carried an Idempotency-Key, so that the same request again gets the same answer and does
// nothing. Kept in the transaction of the request, for some days.

import { foreignKey, index, pgTable, primaryKey, text } from 'drizzle-orm/pg-core';
import { instant, ofItsOrganisation, organisationId } from '../columns.ts';
import { organisations } from './organisations.ts';

export const answers = pgTable(
  'answers',
  {
    organisationId: organisationId(),
    key: text('key').notNull(),
    /** A hash of all that was asked: another request under the same key is told apart. */
    asked: text('asked').notNull(),
    answer: text('answer').notNull(),
    keptAt: instant('kept_at').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.key] }),
    index('answers_kept').on(table.organisationId, table.keptAt),
    foreignKey({ columns: [table.organisationId], foreignColumns: [organisations.id] }),
    ofItsOrganisation(table.organisationId),
  ],
);
