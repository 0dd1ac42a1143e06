// The embedded database: PostgreSQL inside this process, in a folder.

import { PGlite, types } from '@electric-sql/pglite';
import type { Connection } from './connection.ts';

const asText = (text: string) => text;
/** Everything that JSON would not hold as it is comes as PostgreSQL's own text. */
const parsers = Object.fromEntries(
  [types.INT8, types.JSON, types.JSONB, types.DATE, types.TIMESTAMPTZ].map((type) => [type, asText]),
);

/** Opens the database in a folder; makes it where the folder is empty. */
export async function openEmbedded(folder: string): Promise<Connection> {
  const database = await PGlite.create(folder, { parsers });
  return {
    losses: 0,
    query: async (text, values) =>
      (await database.query<unknown[]>(text, [...values], { rowMode: 'array' })).rows,
    run: async (text) => {
      await database.exec(text);
    },
    close: () => database.close(),
  };
}
