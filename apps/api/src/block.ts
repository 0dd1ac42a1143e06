// The block under which the calls of an engagement stand, by what the books say was paid.

import type { Engagement } from '@colla/engagements';
import { type Block, blockOf } from '@colla/invoicing';
import type { Books } from '@colla/store';
import type { Beside } from './move.ts';

/** Only what is agreed and not over can be blocked. */
export async function blockNow(
  engagement: Engagement,
  { organisation, at }: Beside,
  books: Books,
): Promise<Block | undefined> {
  if (engagement.stage !== 'agreed') return undefined;
  const invoices = await books.invoicesOf([engagement.id]);
  return blockOf({ engagement, invoices, house: organisation }, at);
}
