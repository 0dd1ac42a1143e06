// A payer's credit: what they paid or were given back beyond what they owe. It is applied to invoices, or refunded.

import type { Temporal } from '@colla/calendar';
import { type Currency, toDecimal } from '@colla/money';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import { type Against, type Allocation, type Means, type OpenInvoice, setAgainst } from './allocation.ts';
import type { Method } from './payment.ts';

/** Credit of a payer used to settle invoices. */
export interface CreditApplied {
  readonly id: string;
  readonly party: string;
  readonly on: Temporal.PlainDate;
  readonly currency: Currency;
  readonly allocations: readonly Allocation[];
}

/** Credit of a payer paid back to them, in minor units. */
export interface Refund {
  readonly id: string;
  readonly party: string;
  readonly on: Temporal.PlainDate;
  readonly amount: bigint;
  readonly currency: Currency;
  readonly method: Method;
  readonly reference?: string;
}

/** Settles invoices with a payer's credit. Refuses where there is none or nothing it fits, and what `setAgainst` does. */
export function applyCredit(
  of: Pick<CreditApplied, 'id' | 'on'>,
  credit: Means,
  { open, against }: { readonly open: readonly OpenInvoice[]; readonly against: Against },
): OrRefusal<CreditApplied> {
  const { party, currency } = credit;
  if (credit.amount <= 0n) return noCredit(credit);
  const allocations = setAgainst(credit, open, against);
  if (refused(allocations)) return allocations;
  if (allocations.length === 0) return nothingOpen(party);
  return { ...of, party, currency, allocations };
}

/** Pays credit back. Refuses nothing or less, and more than the credit comes to. */
export function refund(
  of: Pick<Refund, 'id' | 'on' | 'amount' | 'method' | 'reference'>,
  credit: Means,
): OrRefusal<Refund> {
  const { party, currency } = credit;
  if (credit.amount <= 0n) return noCredit(credit);
  if (of.amount <= 0n || of.amount > credit.amount) {
    const most = toDecimal(credit.amount, currency);
    return new Refusal(
      'invoicing/more-than-credit',
      `The credit is ${most}. Pay back more than nothing and at most that.`,
      { credit: most },
      '/amount',
    );
  }
  return { ...of, party, currency };
}

function noCredit({ party, currency }: Means): Refusal {
  return new Refusal(
    'invoicing/no-credit',
    `Nothing is kept as credit of this payer in ${currency}. Look at their statement of account.`,
    { party },
  );
}

/** Why money that is held settles nothing. */
export function nothingOpen(party: string): Refusal {
  return new Refusal(
    'invoicing/nothing-open',
    'No invoice is open that this could settle. It stays as it is until one is.',
    { party },
  );
}
