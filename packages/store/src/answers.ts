// Answers kept by the key of their request: asked again, a request is answered again and changes nothing.

import { Refusal } from '@colla/refusal';
import { eq, sql } from 'drizzle-orm';
import type { Books } from './books.ts';
import { Refused } from './refused.ts';
import { adding, reading } from './rows.ts';
import { statement } from './statement.ts';
import { answers } from './tables/answers.ts';
import type { Transaction } from './transaction.ts';

/** How long a request can be repeated. Nobody waits longer for an answer that was lost. */
const KEPT_DAYS = 7;

// Whoever has the lock is at it; it goes with their transaction.
const begin = statement(sql`select pg_try_advisory_xact_lock(hashtextextended(
  current_setting('colla.organisation') || ' ' || ${sql.placeholder('key')}::text, 1))`);
const byKey = reading(answers, sql`where ${eq(answers.key, sql.placeholder('key'))}`);
const add = adding(answers);
const forget = statement(
  sql`delete from ${answers} where ${answers.keptAt} < ${sql.placeholder('before')}::text::timestamptz`,
);

export function answerBooks(transaction: Transaction): Pick<Books, 'answered' | 'keepAnswer'> {
  return {
    async answered({ key, asked }) {
      const [[mine], [kept]] = await Promise.all([
        begin(transaction, { key }).then(first),
        byKey(transaction, { key }),
      ]);
      if (mine !== true) throw new Refused(underWay);
      if (kept && kept.asked !== asked) throw new Refused(otherRequest);
      return kept?.answer;
    },
    async keepAnswer({ keptAt, ...answer }) {
      const before = keptAt.subtract({ hours: 24 * KEPT_DAYS }).toString();
      await Promise.all([add(transaction, [{ ...answer, keptAt }]), forget(transaction, { before })]);
    },
  };
}

function first(rows: unknown[][]): unknown[] {
  return rows[0] ?? [];
}

const underWay = new Refusal(
  'requests/under-way',
  'The same request is being answered at this moment. Wait a little, then ask again.',
);

const otherRequest = new Refusal(
  'requests/other-request',
  'This key was used for another request. Send a new key with what is asked anew.',
);
