// A PostgreSQL server, version 15 or newer.

import { Refusal } from '@colla/refusal';
import postgres from 'postgres';
import type { Connection } from './connection.ts';
import { Refused } from './refused.ts';

const OLDEST = 15;

const asText = (text: string) => text;
/** Numbers of the types whose values come and go as PostgreSQL's own text: json and jsonb, days and instants. */
const inText = { to: 25, from: [114, 3802, 1082, 1114, 1184], serialize: asText, parse: asText };

/** One connection to the server, made when it is first used. `role` is who it acts as from then on. */
export function connectTo(databaseUrl: string, role?: string): Connection {
  let losses = 0;
  const client = postgres(databaseUrl, {
    max: 1,
    fetch_types: false,
    max_lifetime: null,
    types: { inText },
    connection: { TimeZone: 'UTC', application_name: 'colla-parte', ...(role ? { role } : {}) },
    onnotice: () => undefined,
    onclose: () => {
      losses += 1;
    },
  });
  return {
    get losses() {
      return losses;
    },
    // `execute` sends it now: left to `await`, a later statement could be sent before an earlier one.
    query: (text, values) =>
      client
        .unsafe(text, [...values] as string[], { prepare: true })
        .values()
        .execute(),
    run: async (text) => {
      await client.unsafe(text).simple().execute();
    },
    close: () => client.end(),
  };
}

/** Throws `Refused` where the server cannot be reached, or is too old. */
export async function checkServer(connection: Connection, databaseUrl: string): Promise<void> {
  const [[version]] = (await connection
    .query("select current_setting('server_version_num')", [])
    .catch((reason: unknown) => {
      throw unreachable(databaseUrl, reason);
    })) as [[string]];
  const major = Math.floor(Number(version) / 10_000);
  if (major >= OLDEST) return;
  throw new Refused(
    new Refusal(
      'store/old-server',
      `The PostgreSQL server is of version ${major}; the books need ${OLDEST} or newer.`,
      { version: major },
    ),
  );
}

function unreachable(databaseUrl: string, reason: unknown): Refused {
  const why = reason instanceof Error ? reason.message || (reason as { code?: string }).code : String(reason);
  return new Refused(
    new Refusal(
      'store/no-server',
      `The PostgreSQL server at ${placeOf(databaseUrl)} does not let us in: ${why}. Check DATABASE_URL.`,
    ),
  );
}

/** The address without the password. */
function placeOf(databaseUrl: string): string {
  try {
    const { host, pathname } = new URL(databaseUrl);
    return host + pathname;
  } catch {
    return 'DATABASE_URL';
  }
}

const INSUFFICIENT_PRIVILEGE = '42501';

/** The refusal where the database's user may not do what opening the books takes; undefined for anything else. */
export function withoutRights(reason: unknown): Refused | undefined {
  if ((reason as { code?: unknown } | null)?.code !== INSUFFICIENT_PRIVILEGE) return undefined;
  return new Refused(
    new Refusal(
      'store/no-rights',
      `The user of DATABASE_URL may not set up the books: ${(reason as Error).message}. Let it create roles for the first start, or create colla_books and colla_door and grant both to it.`,
    ),
  );
}
