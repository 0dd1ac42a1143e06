// Sessions, and the list of organisations: what is looked up before the organisation is known. Both run as the
// role `colla_door`, which can read whose a session is and which organisations there are, and nothing else.

import { Temporal } from '@colla/calendar';
import { sql } from 'drizzle-orm';
import type { Session } from './books.ts';
import { adding } from './rows.ts';
import { statement } from './statement.ts';
import { organisations } from './tables/organisations.ts';
import { sessions } from './tables/sessions.ts';
import type { Transaction } from './transaction.ts';

const oldestFirst = statement(
  sql`select ${organisations.id}::text from ${organisations} order by ${organisations.entered}`,
);
const whose = statement(sql`select ${sessions.organisationId}::text, ${sessions.until}::text from ${sessions}
  where ${sessions.tokenHash} = ${sql.placeholder('tokenHash')}
    and ${sessions.until} > ${sql.placeholder('now')}::text::timestamptz`);
const add = adding(sessions);

/** Ids of all organisations, oldest first. At the door only. */
export async function organisationsKept(transaction: Transaction): Promise<string[]> {
  return (await oldestFirst(transaction)).map(([id]) => String(id));
}

/** Whose a session is that has not ended, and until when. At the door only. */
export async function sessionKept(
  transaction: Transaction,
  tokenHash: string,
  now: Temporal.Instant,
): Promise<Session | undefined> {
  const [row] = await whose(transaction, { tokenHash, now: now.toString() });
  return row && { organisation: String(row[0]), until: Temporal.Instant.from(String(row[1])) };
}

/** Keeps a session of the transaction's own organisation. */
export async function addSession(
  transaction: Transaction,
  session: { tokenHash: string; until: Temporal.Instant },
): Promise<void> {
  await add(transaction, [session]);
}
