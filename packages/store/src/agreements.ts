// Agreements, found by their own ids. They are kept with their engagement.

import { eq, sql } from 'drizzle-orm';
import type { Books } from './books.ts';
import { agreementOf } from './engagement-rows.ts';
import { isId } from './page.ts';
import { reading } from './rows.ts';
import { agreements } from './tables/agreements.ts';
import type { Transaction } from './transaction.ts';

const byId = reading(agreements, sql`where ${eq(agreements.id, sql.placeholder('id'))}`);

export function agreementBooks(transaction: Transaction): Pick<Books, 'agreement'> {
  return {
    async agreement(id) {
      const [row] = isId(id) ? await byId(transaction, { id }) : [];
      return row && { agreement: agreementOf(row), engagement: row.engagementId };
    },
  };
}
