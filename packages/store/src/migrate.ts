// Brings the tables of a database to what this version of the program needs. Run as the owner, at every opening.

import { fileURLToPath } from 'node:url';
import { readMigrationFiles } from 'drizzle-orm/migrator';
import type { Connection } from './connection.ts';

/** Where drizzle-kit writes the migrations. */
export const migrationsFolder = fileURLToPath(new URL('../migrations', import.meta.url));

/** One at a time on a server: the number is only a name that nobody else is likely to take. */
const LOCK = 4_102_026;

/**
 * Runs the migrations that this database has not had, all or none, and with them `bring`, which brings along what was
 * kept before. Two who open it at once take turns.
 */
export async function migrate(
  connection: Connection,
  bring?: (connection: Connection) => Promise<void>,
): Promise<void> {
  const migrations = readMigrationFiles({ migrationsFolder });
  await connection.run(`begin; select pg_advisory_xact_lock(${LOCK}); ${TABLE_OF_MIGRATIONS}`);
  try {
    const [[last]] = (await connection.query(LAST_MIGRATION, [])) as [[string | null]];
    const due = migrations.filter(({ folderMillis }) => folderMillis > Number(last ?? 0));
    for (const { sql, hash, folderMillis } of due) {
      await connection.run(`${sql.join(';\n')};
        insert into drizzle.__drizzle_migrations (hash, created_at) values ('${hash}', ${folderMillis})`);
    }
    if (due.length > 0) await bring?.(connection);
    await connection.run('commit');
  } catch (reason) {
    await connection.run('rollback');
    throw reason;
  }
}

// The table by which drizzle-kit's own commands know what has been done.
const TABLE_OF_MIGRATIONS = `create schema if not exists drizzle;
  create table if not exists drizzle.__drizzle_migrations (id serial primary key, hash text not null, created_at bigint)`;
const LAST_MIGRATION = 'select max(created_at)::text from drizzle.__drizzle_migrations';
