// Calls that are not played until what is owed is paid: what is owed and since when, and why one is played all the same.

import type { BlockJson, CallJson, EngagementWholeJson } from '@colla/wire';
import { engagements as say } from '../../catalogue/engagements.ts';
import { sayDay, sayMoney } from '../../locale.ts';

/** What is owed, by the day it was due. */
export function sayDueSince({ due }: BlockJson): string {
  return say('blockDue', { day: sayDay(due) });
}

/** How many calls wait for it. */
export function sayBlock({ calls }: BlockJson): string {
  return say('blockWhy', { count: calls.length });
}

/** What was asked for so far and how much of it has not come. */
export function sayInvoices({ invoices, currency }: EngagementWholeJson): string[] {
  if (invoices.length === 0) return [say('blockNotAsked')];
  return invoices.map(({ number, total, owed }) =>
    say('blockInvoice', { number, total: sayMoney(total, currency), owed: sayMoney(owed, currency) }),
  );
}

/** Whether a call waits for the money. */
export function isBlocked({ block }: EngagementWholeJson, { id }: CallJson): boolean {
  return block?.calls.includes(id) === true;
}

/** How a call stands to it: blocked, or the reason for which it is not; nothing for most. */
export function sayBlocked(engagement: EngagementWholeJson, call: CallJson): string | undefined {
  const { lifted } = call;
  if (isBlocked(engagement, call)) return say('blocked');
  return lifted && say('lifted', { day: sayDay(lifted.at, 'weekday'), reason: lifted.reason });
}
