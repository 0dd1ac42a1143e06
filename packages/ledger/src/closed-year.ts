// Closed years: what was summed for a year end stays as it was summed.

import { Temporal } from '@colla/calendar';
import { type OrRefusal, Refusal } from '@colla/refusal';

/** Whether something can be posted on a day; refuses one in a year that is closed through `closedThrough`. */
export function openOn(
  on: Temporal.PlainDate,
  closedThrough: Temporal.PlainDate | undefined,
): OrRefusal<true> {
  if (!closedThrough || Temporal.PlainDate.compare(on, closedThrough) > 0) return true;
  const next = closedThrough.add({ days: 1 }).toString();
  return new Refusal(
    'ledger/closed-year',
    `The books are closed up to ${closedThrough}, and ${on} is within that. Give a day from ${next} on.`,
    { day: on.toString(), closedThrough: closedThrough.toString() },
    '/on',
  );
}
