// What an engagement is made of, brought from what it was to what it is.

import { and, eq, sql } from 'drizzle-orm';
import type { PgColumn, PgTable } from 'drizzle-orm/pg-core';
import { type NewRow, packRow, saving } from './rows.ts';
import { type Statement, statement } from './statement.ts';
import type { Transaction } from './transaction.ts';

type Replace<Table extends PgTable> = (
  transaction: Transaction,
  engagement: string,
  before: readonly NewRow<Table>[],
  after: readonly NewRow<Table>[],
) => Promise<unknown>;

/** Brings the rows of one engagement from what they were to what they are, touching only those that differ. */
export function replacing<Table extends PgTable>(
  table: Table,
  engagementId: PgColumn,
  key: PgColumn,
  keyOf: (row: NewRow<Table>) => string,
): Replace<Table> {
  const saveRows = saving(table);
  const remove: Statement = statement(
    sql`delete from ${table} where ${and(
      eq(engagementId, sql.placeholder('engagement')),
      sql`${key}::text in (select json_array_elements_text(${sql.placeholder('keys')}::text::json))`,
    )}`,
  );
  return (transaction, engagement, before, after) => {
    const written = (row: NewRow<Table>) => JSON.stringify(packRow(table, row));
    const was = new Map(before.map((row) => [keyOf(row), written(row)]));
    const changed = after.filter((row) => was.get(keyOf(row)) !== written(row));
    const stays = new Set(after.map(keyOf));
    const keys = [...was.keys()].filter((key) => !stays.has(key));
    return Promise.all([
      keys.length > 0 ? remove(transaction, { engagement, keys: JSON.stringify(keys) }) : undefined,
      saveRows(transaction, changed),
    ]);
  };
}
