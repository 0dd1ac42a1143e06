// Calls that are not played until what is owed is paid: what is owed and since when, and why one is played all the same.

import type { BlockJson, CallJson, EngagementWholeJson } from '@colla/wire';
import { engagements as say } from '../../catalogue/engagements.ts';
import { sayDay, sayMoney } from '../../locale.ts';

/** What is owed, since when, and how many calls wait for it. */
export function sayBlock({ owed, due, calls }: BlockJson, currency: string): string {
  return say('blockWhy', { owed: sayMoney(owed, currency), day: sayDay(due), count: calls.length });
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
