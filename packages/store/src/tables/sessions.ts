// Who may come in: the hash of a token, and until when.

import { foreignKey, pgTable, primaryKey, text, unique } from 'drizzle-orm/pg-core';
import { atTheDoor, instant, ofItsOrganisation, organisationId } from '../columns.ts';
import { organisations } from './organisations.ts';

export const sessions = pgTable(
  'sessions',
  {
    organisationId: organisationId(),
    tokenHash: text('token_hash').notNull(),
    until: instant('until').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.tokenHash] }),
    unique('sessions_token_hash').on(table.tokenHash),
    foreignKey({ columns: [table.organisationId], foreignColumns: [organisations.id] }),
    ofItsOrganisation(table.organisationId),
    atTheDoor(),
  ],
);
