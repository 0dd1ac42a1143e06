// The days that can be posted to: not those to come, and none of a closed year, which stays as it was summed.

import { Temporal } from '@colla/calendar';
import { type OrRefusal, Refusal } from '@colla/refusal';

/** Up to which day the books are closed, where they ever were, and which day it is. */
export interface OpenDays {
  readonly closedThrough?: Temporal.PlainDate;
  readonly today: Temporal.PlainDate;
}

/** Whether something can be posted on a day; refuses one that is closed, and one after today. */
export function openOn(on: Temporal.PlainDate, { closedThrough, today }: OpenDays): OrRefusal<true> {
  if (Temporal.PlainDate.compare(on, today) > 0) return ahead(on, today);
  if (!closedThrough || Temporal.PlainDate.compare(on, closedThrough) > 0) return true;
  const next = closedThrough.add({ days: 1 }).toString();
  return new Refusal(
    'ledger/closed-year',
    `The books are closed up to ${closedThrough}, and ${on} is within that. Give a day from ${next} on.`,
    { day: on.toString(), closedThrough: closedThrough.toString() },
    '/on',
  );
}

function ahead(on: Temporal.PlainDate, today: Temporal.PlainDate): Refusal {
  return new Refusal(
    'ledger/ahead',
    `Today is ${today}, and ${on} has not come yet. Correct the day.`,
    { day: on.toString(), today: today.toString() },
    '/on',
  );
}
