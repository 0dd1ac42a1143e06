// Books that are kept in memory, for the tests of this room: what happens is posted, and every figure is read back.

import { accountKey, balance, heldIn, type Journal, type Posted, postingsOf } from '@colla/ledger';
import { granted, type OrRefusal } from '@colla/refusal';
import type { OpenInvoice } from './allocation.ts';
import { day, POUND } from './engaged.fixture.ts';
import { happened, type MoneyEvent } from './event.ts';
import type { Invoice } from './invoice.ts';
import { type BooksBefore, post } from './posting.ts';

/** Books in pounds, unless said otherwise, that nothing has happened in yet. */
export function emptyBooks(but: Partial<Pick<BooksBefore, 'book' | 'closedThrough' | 'today'>> = {}) {
  const journals: Journal[] = [];
  const posted: Posted[] = [];
  const of = (event: MoneyEvent, rate?: BooksBefore['rate']): BooksBefore => ({
    id: `j${journals.length + 1}`,
    book: POUND,
    today: day('12-31'),
    ...but,
    ...(rate ? { rate } : {}),
    held: (account) => heldIn(posted, account, happened(event).currency),
  });
  const attempt = (event: MoneyEvent, rate?: BooksBefore['rate']): OrRefusal<Journal> =>
    post(event, of(event, rate));
  return {
    journals,
    posted,
    /** What posting would answer, without doing it. */
    attempt,
    enter(event: MoneyEvent, rate?: BooksBefore['rate']): Journal {
      const journal = granted(attempt(event, rate));
      journals.push(journal);
      posted.push(...postingsOf(journal));
      return journal;
    },
    open: (invoice: Invoice): OpenInvoice => ({
      invoice: invoice.id,
      number: invoice.number,
      owed: balance(posted, { purpose: 'receivable', invoice: invoice.id, currency: invoice.currency })
        .amount,
      currency: invoice.currency,
      party: invoice.to.party,
      engagement: invoice.engagement,
      issuedOn: invoice.issuedOn,
      dueOn: invoice.dueOn,
    }),
    credit: (party: string, currency = POUND) =>
      balance(posted, { purpose: 'credit held', party, currency }).amount,
    deposit: (engagement: string, currency = POUND) =>
      balance(posted, { purpose: 'deposits held', engagement, currency }).amount,
  };
}

/** A journal as figures: which account is credited, which is debited, by how much, and in the book where that differs. */
export function figures({ transfers }: Journal) {
  return transfers.map(({ from, to, amount, book }) => [
    short(accountKey(from)),
    short(accountKey(to)),
    amount,
    ...(book === amount ? [] : [book]),
  ]);
}

function short(key: string): string {
  return key.replaceAll('\u0000', ' ');
}
