// The one function that posts: every document and every movement of money becomes its journal here, and nowhere else.

import {
  type Account,
  accountKey,
  changesBy,
  type ExchangeRate,
  eachInBook,
  type HeldBefore,
  type Journal,
  journal,
  mirror,
  move,
  type OpenDays,
  openOn,
  partOf,
  partsOf,
  realised,
  type Transfer,
} from '@colla/ledger';
import type { Currency } from '@colla/money';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import { happened, type MoneyEvent } from './event.ts';
import { movesOf } from './moves.ts';

/** The books an event is posted to. `held` is what an account holds before it in the event's currency, as debits. */
export interface BooksBefore extends OpenDays {
  /** The new journal's id. */
  readonly id: string;
  readonly book: Currency;
  /** What a foreign currency is worth where money comes or goes or a document is issued: a credit note's is its invoice's. */
  readonly rate?: ExchangeRate;
  readonly held: HeldBefore;
}

type Undoing = Extract<MoneyEvent, { kind: 'undo' }>;

/**
 * The journal of an event. Refuses a day in a closed year or to come, a foreign currency without its exchange rate, and taking back
 * what was settled since. Everything else was refused where the record was made: a debt settled beyond what is owed, or
 * more taken from a deposit or credit than is held, is a broken invariant and throws.
 */
export function post(event: MoneyEvent, books: BooksBefore): OrRefusal<Journal> {
  const { currency, ...what } = happened(event);
  const open = openOn(what.on, books);
  if (refused(open)) return open;
  const rate = rateFor(event, currency, books);
  if (refused(rate)) return rate;
  const given = event.kind === 'undo' ? undoing(event, books) : valued(event, rate, books);
  const transfers = [...given, ...(currency === books.book ? [] : realised(given, books.held))];
  const may = event.kind === 'undo' ? stillOwed(transfers, books) : true;
  if (refused(may)) return may;
  mustHold(transfers, event, books);
  return journal({ ...what, id: books.id, currency, book: books.book, ...(rate ? { rate } : {}), transfers });
}

/** None in the book's own currency, nor where what is held only changes its purpose. */
function rateFor(
  event: MoneyEvent,
  currency: Currency,
  books: BooksBefore,
): OrRefusal<ExchangeRate | undefined> {
  if (currency === books.book || isWithin(event)) return undefined;
  const rate = event.kind === 'undo' ? event.journals[0].rate : books.rate;
  if (rate === undefined) return event.kind === 'undo' ? undefined : noRate(currency, books.book);
  if (rate.from !== currency || rate.to !== books.book)
    throw new Error('an exchange rate of other currencies');
  return rate;
}

/** No money comes or goes: what is owed and held is set against one another, or given up. */
function isWithin({ kind }: MoneyEvent): boolean {
  return kind === 'deposit applied' || kind === 'credit applied' || kind === 'write-off';
}

function noRate(currency: Currency, book: Currency): Refusal {
  return new Refusal(
    'invoicing/no-rate',
    `The books are kept in ${book}, and this is in ${currency}. Enter the exchange rate of the day and where it is from.`,
    { currency, book },
    '/rate',
  );
}

/** An event's moves with what they are in the book, which together are what their sum is. */
function valued(
  event: Exclude<MoneyEvent, Undoing>,
  rate: ExchangeRate | undefined,
  { book, held }: BooksBefore,
): Transfer[] {
  const moves = movesOf(event).filter(({ amount }) => amount !== 0n);
  const amounts = moves.map(({ amount }) => amount);
  const [first] = moves;
  if (!first) throw new Error(`nothing was moved: ${event.kind}`);
  const standing = () => partsOf(held(event.kind === 'write-off' ? first.from : first.to), amounts);
  const inBook = rate ? eachInBook(amounts, rate) : event.record.currency === book ? amounts : standing();
  return moves.flatMap((of, index) => move({ ...of, book: inBook[index] ?? 0n }));
}

/** The mirror of what is taken back. What of a deposit was applied or returned meanwhile becomes owed by its payer. */
function undoing({ journals }: Undoing, { held }: BooksBefore): Transfer[] {
  const transfers = journals.flatMap((of) => mirror(of.transfers));
  const gone = changesBy(transfers).flatMap(({ account, change }) => {
    const missing = held(account).amount + change.amount;
    if (account.purpose !== 'deposits held' || missing <= 0n) return [];
    const to: Account = { purpose: 'credit held', party: account.party };
    return move({ from: account, to, amount: missing, book: partOf(change, missing) });
  });
  return [...transfers, ...gone];
}

/** Interest that was charged and paid cannot be taken back: what was paid would be owed by nobody. */
function stillOwed(transfers: readonly Transfer[], { held }: BooksBefore): OrRefusal<true> {
  const settled = changesBy(transfers).some(
    ({ account, change }) => account.purpose === 'receivable' && held(account).amount + change.amount < 0n,
  );
  if (!settled) return true;
  return new Refusal(
    'invoicing/paid-meanwhile',
    'This has been paid since, so it cannot be taken back. Take the payment back first, or refund it as credit.',
    {},
  );
}

/** No debt below nothing, and nothing taken that is not held: only a bounce leaves a payer with less than no credit. */
function mustHold(transfers: readonly Transfer[], { kind }: MoneyEvent, { held }: BooksBefore): void {
  for (const { account, change } of changesBy(transfers)) {
    const after = () => held(account).amount + change.amount;
    const { purpose } = account;
    const overdrawn =
      (purpose === 'receivable' && change.amount < 0n && after() < 0n) ||
      (purpose === 'deposits held' && change.amount > 0n && after() > 0n) ||
      (purpose === 'credit held' && change.amount > 0n && after() > 0n && kind !== 'undo');
    if (overdrawn) throw new Error(`more than there is was to be taken: ${accountKey(account)}`);
  }
}
