// What can happen to the money: documents issued, and money that comes, goes, or changes its purpose.

import type { Temporal } from '@colla/calendar';
import type { Journal, Source } from '@colla/ledger';
import type { Currency } from '@colla/money';
import type { CreditApplied, Refund } from './credit.ts';
import type { CreditNote } from './credit-note.ts';
import type { Deposit, DepositApplied, DepositReturned } from './deposit.ts';
import type { Invoice } from './invoice.ts';
import type { LateInterest } from './late-interest.ts';
import type { Payment } from './payment.ts';
import type { Undo } from './undo.ts';
import type { WriteOff } from './write-off.ts';

/** The record of something that happened, by its kind. A deposit that is kept is one applied to an invoice. */
export type MoneyEvent =
  | { readonly kind: 'invoice'; readonly record: Invoice }
  | { readonly kind: 'credit note'; readonly record: CreditNote }
  | { readonly kind: 'payment'; readonly record: Payment }
  | { readonly kind: 'deposit'; readonly record: Deposit }
  | { readonly kind: 'deposit applied'; readonly record: DepositApplied }
  | { readonly kind: 'deposit returned'; readonly record: DepositReturned }
  | { readonly kind: 'credit applied'; readonly record: CreditApplied }
  | { readonly kind: 'refund'; readonly record: Refund }
  | { readonly kind: 'write-off'; readonly record: WriteOff }
  | { readonly kind: 'late interest'; readonly record: LateInterest }
  /** `journals` are those of the record that is taken back, and of what was written off when it came. */
  | { readonly kind: 'undo'; readonly record: Undo; readonly journals: readonly [Journal, ...Journal[]] };

/** What a journal says of an event before its figures. */
export interface Happened {
  readonly event: string;
  readonly source: Source;
  readonly takesBack?: Source;
  readonly on: Temporal.PlainDate;
  readonly currency: Currency;
}

/** What happened, in the words of a statement of account. */
export const EVENT_WORDS: Readonly<Record<Exclude<MoneyEvent['kind'], 'undo'>, string>> = {
  invoice: 'invoice issued',
  'credit note': 'credit note issued',
  payment: 'payment received',
  deposit: 'deposit received',
  'deposit applied': 'deposit applied',
  'deposit returned': 'deposit returned',
  'credit applied': 'credit applied',
  refund: 'refund paid',
  'write-off': 'written off',
  'late interest': 'late interest charged',
};

/** When something happened, to what, and in which currency. */
export function happened(event: MoneyEvent): Happened {
  const { kind, record } = event;
  const source = { kind, id: record.id };
  if (kind === 'undo') {
    const [{ event: what, currency }] = event.journals;
    const because = record.because === 'bounced' ? 'bounced' : 'taken back';
    return { event: `${because}: ${what}`, source, takesBack: record.of, on: record.on, currency };
  }
  return { event: EVENT_WORDS[kind], source, on: dayOf(event), currency: record.currency };
}

function dayOf({ record }: Exclude<MoneyEvent, { kind: 'undo' }>): Temporal.PlainDate {
  if ('issuedOn' in record) return record.issuedOn;
  return 'receivedOn' in record ? record.receivedOn : record.on;
}
