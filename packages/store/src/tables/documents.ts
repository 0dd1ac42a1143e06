// Documents as they were issued: the very bytes, and their hash. Written in the transaction that issues, never altered.

import type { NumberedKind } from '@colla/invoicing';
import { sql } from 'drizzle-orm';
import { check, foreignKey, integer, pgTable, primaryKey, text, unique, uuid } from 'drizzle-orm/pg-core';
import { bytes, instant, ofItsOrganisation, organisationId } from '../columns.ts';
import { organisations } from './organisations.ts';

export const documents = pgTable(
  'documents',
  {
    organisationId: organisationId(),
    /** The record it is the document of. */
    of: uuid('of').notNull(),
    kind: text('kind').$type<NumberedKind>().notNull(),
    series: text('series').notNull(),
    ordinal: integer('ordinal').notNull(),
    number: text('number').notNull(),
    bytes: bytes('bytes').notNull(),
    /** SHA-256 of the bytes, in hexadecimal. */
    sha256: text('sha256').notNull(),
    /** When it was printed: with its record, or when an invoice of before documents were kept was first asked for. */
    issuedAt: instant('issued_at').notNull(),
  },
  (table) => [
    primaryKey({ columns: [table.organisationId, table.of] }),
    unique('documents_ordinal').on(table.organisationId, table.series, table.ordinal),
    foreignKey({ columns: [table.organisationId], foreignColumns: [organisations.id] }),
    check('documents_ordinal_from_one', sql`${table.ordinal} >= 1`),
    check('documents_sha256', sql`${table.sha256} = encode(sha256(${table.bytes}), 'hex')`),
    ofItsOrganisation(table.organisationId),
  ],
);
