// Documents as they were issued.

import { createHash } from 'node:crypto';
import { eq, sql } from 'drizzle-orm';
import type { Books } from './books.ts';
import { isId } from './page.ts';
import { adding, reading } from './rows.ts';
import { documents } from './tables/documents.ts';
import type { Transaction } from './transaction.ts';

const ofRecord = reading(documents, sql`where ${eq(documents.of, sql.placeholder('of'))}`);
const add = adding(documents, sql`on conflict (organisation_id, "of") do nothing`);

export function documentBooks(transaction: Transaction): Pick<Books, 'document' | 'keepDocument'> {
  const document: Books['document'] = async (of) =>
    isId(of) ? (await ofRecord(transaction, { of }))[0] : undefined;
  return {
    document,
    async keepDocument(issued) {
      const sha256 = createHash('sha256').update(issued.bytes).digest('hex');
      await add(transaction, [{ ...issued, sha256 }]);
    },
  };
}
