// A journal: what one document or payment did to the books, on one day. Posted once, never altered.

import type { Temporal } from '@colla/calendar';
import type { Currency } from '@colla/money';
import type { Account } from './account.ts';
import type { ExchangeRate } from './exchange-rate.ts';
import { type Transfer, transfer } from './transfer.ts';

/** The record behind a journal: an invoice, a credit note, a payment… by its kind and id. */
export interface Source {
  readonly kind: string;
  readonly id: string;
}

/** Amounts are minor units of `currency`; in the book they are minor units of `book`. */
export interface Journal {
  readonly id: string;
  readonly on: Temporal.PlainDate;
  /** What happened, in words: “invoice issued”. */
  readonly event: string;
  readonly source: Source;
  /** The record that it undoes, where it does. */
  readonly takesBack?: Source;
  readonly currency: Currency;
  readonly book: Currency;
  /** How amounts were turned into the book's currency; none where both are one. */
  readonly rate?: ExchangeRate;
  readonly transfers: readonly Transfer[];
}

/** One side of a transfer. Debits are above nothing, credits below. */
export interface Posting {
  readonly account: Account;
  readonly amount: bigint;
  readonly book: bigint;
  readonly party?: string;
  readonly engagement?: string;
}

/** A posting with what its journal says of it. */
export type Posted = Posting &
  Pick<Journal, 'on' | 'event' | 'source' | 'takesBack' | 'currency'> & { readonly journal: string };

/**
 * A journal of transfers, which balances in each currency because each of them does. One without a transfer, or one
 * that says two figures where there is one currency, is a broken invariant.
 */
export function journal(of: Journal): Journal {
  if (of.transfers.length === 0) throw new Error(`a journal of nothing was to be posted: ${of.event}`);
  const one = of.currency === of.book;
  for (const each of of.transfers.map(transfer)) {
    if (one && each.amount !== each.book) throw new Error(`two figures in one currency: ${of.event}`);
  }
  return of;
}

/** Two postings for each transfer, credit before debit, in the order of the transfers. */
export function postingsOf({ id, on, event, source, takesBack, currency, transfers }: Journal): Posted[] {
  const of = { journal: id, on, event, source, ...(takesBack ? { takesBack } : {}), currency };
  return transfers.flatMap(({ from, to, amount, book, ...about }) => [
    { ...of, ...about, account: from, amount: -amount, book: -book },
    { ...of, ...about, account: to, amount, book },
  ]);
}

/** Reads transfers back from postings in the order `postingsOf` gave them; a pair that does not balance is loud. */
export function transfersFrom(postings: readonly Posting[]): Transfer[] {
  if (postings.length % 2 !== 0) throw new Error('a posting without its other side');
  return Array.from({ length: postings.length / 2 }, (_, index) => {
    const [credit, debit] = postings.slice(2 * index, 2 * index + 2);
    if (!credit || !debit || credit.amount !== -debit.amount || credit.book !== -debit.book)
      throw new Error('two postings that do not balance');
    const { account: to, amount, book, party, engagement } = debit;
    return transfer({
      from: credit.account,
      to,
      amount,
      book,
      ...(party === undefined ? {} : { party }),
      ...(engagement === undefined ? {} : { engagement }),
    });
  });
}
