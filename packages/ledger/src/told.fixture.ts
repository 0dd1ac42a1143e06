// Accounts, days and a small book for the tests of this room.

import { Temporal } from '@colla/calendar';
import { currency } from '@colla/money';
import { granted } from '@colla/refusal';
import type { Account, IncomeKind } from './account.ts';
import { type Journal, journal, type Posted, postingsOf } from './journal.ts';

export const POUND = granted(currency('GBP'));
export const EURO = granted(currency('EUR'));
export const YEN = granted(currency('JPY'));
export const DINAR = granted(currency('KWD'));

export const BANK: Account = { purpose: 'bank' };
export const VAT: Account = { purpose: 'tax collected', tax: 'VAT' };
export const owedBy = (party: string, invoice: string): Account => ({
  purpose: 'receivable',
  party,
  invoice,
});
export const creditOf = (party: string): Account => ({ purpose: 'credit held', party });
export const depositFor = (engagement: string, party: string): Account => ({
  purpose: 'deposits held',
  engagement,
  party,
});
export const income = (kind: IncomeKind): Account => ({ purpose: 'income', kind });

/** A day of 2026, such as `03-14`. */
export function day(text: string): Temporal.PlainDate {
  return Temporal.PlainDate.from(`2026-${text}`);
}

/** A journal in pounds, in the books of one who counts in pounds, unless said otherwise. */
export function posted(of: Pick<Journal, 'id' | 'on' | 'transfers'> & Partial<Journal>): Posted[] {
  return postingsOf(
    journal({ event: 'told', source: { kind: 'record', id: of.id }, currency: POUND, book: POUND, ...of }),
  );
}

/** So many pence from one account to another. */
export function pence(from: Account, to: Account, amount: bigint) {
  return { from, to, amount, book: amount };
}
