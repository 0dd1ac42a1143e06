// A payment as it is typed, read into what the server keeps.

import { refused } from '@colla/refusal';
import type { InvoiceJson, Problem, RequestOf } from '@colla/wire';
import { isProblemOf } from '@colla/wire/client';
import { invoices as say } from '../../catalogue/invoices.ts';
import { asTyped, readTyped } from '../../locale.ts';
import { rateOf, type TypedRate } from '../../ui/index.ts';

export interface PaymentDraft {
  /** As typed. */
  readonly amount: string;
  readonly receivedOn: string;
  readonly method: NonNullable<RequestOf<'addPayment'>['body']['method']>;
  readonly reference: string;
  readonly rate: TypedRate;
}

type Body = RequestOf<'addPayment'>['body'];

/** A payment of all that is owed, received today by bank transfer. */
export function startPayment({ owed }: Pick<InvoiceJson, 'owed'>, today: string): PaymentDraft {
  return {
    amount: asTyped(owed),
    receivedOn: today,
    method: 'bank transfer',
    reference: '',
    rate: { rate: '', on: today, source: '' },
  };
}

/** What is sent to books kept in the currency `book`, or the sentence that stands beside the amount. */
export function paymentOf(
  draft: PaymentDraft,
  { currency }: Pick<InvoiceJson, 'currency'>,
  { book, keepCredit }: { book: string; keepCredit: boolean },
): { body: Body } | { wrong: { pointer: string; detail: string } } {
  if (draft.amount.trim() === '') return { wrong: { pointer: '/amount', detail: say('emptyAmount') } };
  const amount = readTyped(draft.amount, currency);
  if (refused(amount)) return { wrong: { pointer: '/amount', detail: amount.sentence } };
  const reference = draft.reference.trim();
  const body = {
    receivedOn: draft.receivedOn,
    amount,
    method: draft.method,
    ...(reference ? { reference } : {}),
    ...(keepCredit ? { keepCredit } : {}),
    ...rateOf(draft.rate, { from: currency, to: book }),
  };
  return { body };
}

/** How much more came in than is owed, where that is why the server did not keep it; decimal text. */
export function overpaid(problem: Problem | undefined): string | undefined {
  const over = problem && isProblemOf(problem, 'invoicing/more-than-owed') ? problem.facts?.over : undefined;
  return typeof over === 'string' ? over : undefined;
}
