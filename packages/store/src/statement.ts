// SQL that is put together once, from the tables, and run many times with other values.

import { fillPlaceholders, type SQL } from 'drizzle-orm';
import { PgDialect } from 'drizzle-orm/pg-core';
import type { Transaction } from './transaction.ts';

const dialect = new PgDialect();

/** Values for the placeholders of a statement: text, numbers, booleans or null. */
export type Values = Readonly<Record<string, string | number | boolean | null>>;

/** A statement that can be run in any transaction. */
export type Statement = (transaction: Transaction, values?: Values) => Promise<unknown[][]>;

/** Makes SQL with placeholders into a statement. The text never changes, so a server plans it once. */
export function statement(query: SQL): Statement {
  const { sql: text, params } = dialect.sqlToQuery(query);
  return (transaction, values = {}) => transaction.query(text, fillPlaceholders(params, values));
}
