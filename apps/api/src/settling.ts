// An engagement is settled once nothing of it is left to ask for or to be paid.

import type { Temporal } from '@colla/calendar';
import { type Engagement, hasAgreement, type Settled, settle, statementUnder } from '@colla/engagements';
import { leftToInvoice, standingOf } from '@colla/invoicing';
import { type OrRefusal, refused } from '@colla/refusal';
import type { Books } from '@colla/store';
import type { Beside } from './move.ts';

/** The engagement settled by what the books say of it, or why it cannot be. */
export async function settledBy(
  books: Books,
  engagement: Engagement,
  { organisation, at }: Beside,
): Promise<OrRefusal<Settled>> {
  const [asked, invoices] = await Promise.all([
    books.askedOf(engagement.id),
    books.invoicesOf([engagement.id]),
  ]);
  const today = at.toPlainDate();
  const standings = invoices.map(({ invoice, paid }) => standingOf(invoice, paid, today));
  const toInvoice = hasAgreement(engagement)
    ? leftToInvoice(statementUnder(engagement, engagement.agreement, at, organisation), asked)
    : 0n;
  const owed = standings.reduce((sum, standing) => sum + standing.owed, 0n);
  return settle(engagement, { at, toInvoice, owed });
}

/** Settles an engagement of which nothing is open; leaves any other as it is. */
export async function settleIfDone(id: string, books: Books, now: Temporal.Instant): Promise<void> {
  const [organisation, engagement] = await Promise.all([books.organisation(), books.lockEngagement(id)]);
  if (engagement?.stage !== 'agreed') return;
  const at = now.toZonedDateTimeISO(organisation.zone);
  const settled = await settledBy(books, engagement, { organisation, at });
  if (!refused(settled)) await books.saveEngagement(settled);
}
