// The deposit that is kept where everything falls, though the scale would leave less.

import { Temporal } from '@colla/calendar';
import type { Desk } from '../desk.ts';
import { dueOn } from '../due.ts';
import type { Item } from '../item.ts';
import type { ClauseHead } from '../kind.ts';

/**
 * Makes what is left up to the deposit, where every call fell by the payer’s word and nothing was forgiven; not where
 * the last word came while the deposit was still given back.
 */
export function keepDeposit(desk: Desk, clause: ClauseHead): void {
  const fell = desk.items.length > 0 && desk.items.every(({ verdict }) => verdict && !verdict.pardoned);
  const deposit = desk.deposit?.amount ?? 0n;
  const left = desk.lines.reduce((sum, { amount }) => sum + amount, 0n);
  if (!fell || left >= deposit || isGivenBack(desk)) return;
  desk.charge(clause, {
    category: 'cancellation',
    what: 'Deposit kept',
    about: 'kept',
    calls: desk.items.map(({ call }) => call.id),
    facts: [
      { name: 'deposit', value: desk.voice.money(deposit) },
      { name: 'otherwise left', value: desk.voice.money(left) },
    ],
    quantity: { count: 1, of: 1 },
    unit: 'deposit',
    rate: deposit - left,
  });
}

/** Whether word of every call came by the day until which the deposit is given back on request. */
function isGivenBack({ deposit, facts, items }: Desk): boolean {
  const until = deposit?.refundable && dueOn(deposit.refundable, facts);
  if (!until) return false;
  return items.every((item) => {
    const on = wordOn(item);
    return on !== undefined && Temporal.PlainDate.compare(on, until) <= 0;
  });
}

/** The day, at the place, on which word of a call came. */
function wordOn({ call: { standing, planned } }: Item): Temporal.PlainDate | undefined {
  if (standing.is !== 'cancelled') return undefined;
  return standing.at.withTimeZone(planned.start.timeZoneId).toPlainDate();
}
