// The deposit on the wire, as a statement reckons it and an agreement keeps it.

import { type Currency, toDecimal } from '@colla/money';
import { type DepositDue, eventDaySchema } from '@colla/rates';
import { z } from 'zod';
import { amount } from './words.ts';

/** The earliest of some days, each told by an event. */
export const due = z.array(eventDaySchema);

export const deposit = z.object({
  clause: z.string(),
  amount,
  due,
  /** Until when it is given back. */
  refundable: due.optional(),
  counts: z.enum(['the final invoice', 'the next invoice', 'nothing']),
  arithmetic: z.string(),
});
export type DepositJson = z.output<typeof deposit>;

export function showDeposit({ refundable, ...of }: DepositDue, currency: Currency): DepositJson {
  return {
    ...of,
    amount: toDecimal(of.amount, currency),
    due: [...of.due],
    ...(refundable ? { refundable: [...refundable] } : {}),
  };
}
