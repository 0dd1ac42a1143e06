// Which of two days comes first.

import { Temporal } from 'temporal-polyfill';

/** Whether a day comes after another; not where they are one. */
export function isAfter(one: Temporal.PlainDate, other: Temporal.PlainDate): boolean {
  return Temporal.PlainDate.compare(one, other) > 0;
}
