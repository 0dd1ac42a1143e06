// Which version of a tariff is in force.

import { Temporal } from '@colla/calendar';
import { type Call, inOrder } from '@colla/hours';

/**
 * The version in force on the day of the first call, the newest where there is no call; none where the tariff begins
 * after that day, for then it must be named. Versions are oldest first, and `from` is the day on which one begins.
 */
export function versionInForce<Version extends { readonly from: Temporal.PlainDate | string }>(
  versions: readonly Version[],
  calls: readonly Call[],
): Version | undefined {
  const first = inOrder(calls)[0]?.planned.start.toPlainDate();
  if (first === undefined) return versions.at(-1);
  return versions.findLast(({ from }) => Temporal.PlainDate.compare(from, first) <= 0);
}
