// Rows of a table on their way in and out, as JSON: one statement reads or writes any number of them, and the
// columns themselves turn text into the domain's values. Both databases speak the same JSON.

import {
  getTableColumns,
  type InferInsertModel,
  type InferSelectModel,
  type SQL,
  type SQLChunk,
  sql,
} from 'drizzle-orm';
import { getTableConfig, type PgColumn, type PgTable } from 'drizzle-orm/pg-core';
import { statement, type Values } from './statement.ts';
import type { Transaction } from './transaction.ts';

/** A row as the domain sees it: whose it is, is known. */
export type Row<Table extends PgTable> = Omit<InferSelectModel<Table>, 'organisationId' | 'entered'>;
/** A row to be kept. */
export type NewRow<Table extends PgTable> = Omit<InferInsertModel<Table>, 'organisationId' | 'entered'>;

/** One row as a JSON array of its columns. */
export function packed(table: PgTable): SQL {
  return sql`json_build_array(${sql.join(
    columnsOf(table).map(([, column]) => (inText(column) ? sql`${column}::text` : sql`${column}`)),
    sql`, `,
  )})`;
}

/** Rows of another table that belong to a row, in order, as one JSON array. `rest` says which and in what order. */
export function packedRows(table: PgTable, which: SQL, order: SQL): SQL {
  return sql`(select coalesce(json_agg(${packed(table)} order by ${order}), '[]') from ${table} where ${which})`;
}

/** Reads what `packed` made. */
export function unpack<Table extends PgTable>(table: Table, json: unknown): Row<Table> {
  return unpackRow(table, JSON.parse(String(json)) as unknown[]);
}

/** Reads what `packedRows` made. */
export function unpackRows<Table extends PgTable>(table: Table, json: unknown): Row<Table>[] {
  return (JSON.parse(String(json)) as unknown[][]).map((row) => unpackRow(table, row));
}

function unpackRow<Table extends PgTable>(table: Table, values: readonly unknown[]): Row<Table> {
  const row: Record<string, unknown> = {};
  for (const [at, [key, column]] of columnsOf(table).entries()) {
    const value = values[at];
    row[key] = value === null || value === undefined ? null : column.mapFromDriverValue(value);
  }
  return row as Row<Table>;
}

/** Rows of one table: `rest` is the SQL after `from`. */
export function reading<Table extends PgTable>(
  table: Table,
  rest: SQL,
): (transaction: Transaction, values?: Values) => Promise<Row<Table>[]> {
  const select = statement(sql`select ${packed(table)} from ${table} ${rest}`);
  return async (transaction, values) =>
    (await select(transaction, values)).map(([json]) => unpack(table, json));
}

/** Keeps new rows of a table. */
export function adding<Table extends PgTable>(table: Table, conflict: SQL = sql``): Keeping<Table> {
  return keeping(table, conflict);
}

/** Keeps rows of a table, new or changed; `where` says which of the changed ones. */
export function saving<Table extends PgTable>(table: Table, where: SQL = sql``): Keeping<Table> {
  const keys = keysOf(table);
  const changes = columnsOf(table)
    .filter(([, column]) => !keys.includes(column.name))
    .map(([, { name }]) => sql`${sql.identifier(name)} = excluded.${sql.identifier(name)}`);
  const on = sql.join(
    keys.map((key) => sql.identifier(key)),
    sql`, `,
  );
  return keeping(table, sql`on conflict (${on}) do update set ${sql.join(changes, sql`, `)} ${where}`);
}

/** Answers how many rows were kept. */
type Keeping<Table extends PgTable> = (
  transaction: Transaction,
  rows: readonly NewRow<Table>[],
) => Promise<number>;

function keeping<Table extends PgTable>(table: Table, conflict: SQL): Keeping<Table> {
  const insert = statement(sql`${inserting(table, 'rows')} ${conflict} returning 1`);
  return async (transaction, rows) =>
    rows.length === 0 ? 0 : (await insert(transaction, { rows: pack(table, rows) })).length;
}

/** The SQL that keeps new rows of a table, which a placeholder of that name holds as `pack` made them. */
export function inserting(table: PgTable, placeholder: string): SQL {
  const columns = columnsOf(table).map(([, column]) => column);
  const names = columns.map(({ name }) => sql.identifier(name));
  const fields = columns.map((column) => sql`${sql.identifier(column.name)} ${sql.raw(fieldType(column))}`);
  const values = columns.map(
    (column) => sql`r.${sql.identifier(column.name)}::${sql.raw(column.getSQLType())}`,
  );
  const list = (chunks: SQLChunk[]) => sql.join(chunks, sql`, `);
  return sql`insert into ${table} (${list(names)}) select ${list(values)}
    from json_to_recordset(${sql.placeholder(placeholder)}::text::json) as r (${list(fields)})`;
}

/** The rows as JSON that `json_to_recordset` reads. */
export function pack<Table extends PgTable>(table: Table, rows: readonly NewRow<Table>[]): string {
  return JSON.stringify(rows.map((row) => packRow(table, row)));
}

/** One row as JSON would hold it. Two rows are the same where this is. */
export function packRow<Table extends PgTable>(table: Table, row: NewRow<Table>): Record<string, unknown> {
  const values = row as Record<string, unknown>;
  const entries = columnsOf(table).map(([key, column]) => {
    const value = values[key];
    return [column.name, value === null || value === undefined ? null : column.mapToDriverValue(value)];
  });
  return Object.fromEntries(entries) as Record<string, unknown>;
}

const seen = new WeakMap<PgTable, [string, PgColumn][]>();

/** The columns that say something: not whose a row is, nor in which order it was entered. */
function columnsOf(table: PgTable): [string, PgColumn][] {
  const known = seen.get(table);
  if (known) return known;
  const columns = Object.entries(getTableColumns(table)).filter(
    ([key, { generatedIdentity }]) => key !== 'organisationId' && !generatedIdentity,
  );
  seen.set(table, columns);
  return columns;
}

/** JSON has no exact whole numbers of eight bytes, and a tariff is looked up by its text. */
function inText(column: PgColumn): boolean {
  return ['bigint', 'jsonb'].includes(column.getSQLType());
}

/** How a column's value stands in the JSON: what is JSON itself stands there as text. */
function fieldType(column: PgColumn): string {
  return column.getSQLType() === 'jsonb' ? 'text' : column.getSQLType();
}

/** The names of the columns of the primary key. */
function keysOf(table: PgTable): string[] {
  const { columns, primaryKeys } = getTableConfig(table);
  const one = columns.filter(({ primary }) => primary);
  return (primaryKeys[0]?.columns ?? one).map(({ name }) => name);
}

/** A row without what it leaves open: a null of the books is an absent property of the domain. */
export type Present<R> = { [K in keyof R as null extends R[K] ? never : K]: R[K] } & {
  [K in keyof R as null extends R[K] ? K : never]?: Exclude<R[K], null>;
};

/** The same values, the nulls left out. */
export function present<R extends object>(row: R): Present<R> {
  return Object.fromEntries(Object.entries(row).filter(([, value]) => value !== null)) as Present<R>;
}
