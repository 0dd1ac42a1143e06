// The accounts that the posting of an event looks at before: what is owed and held, that it settles or takes from.

import type { Account } from '@colla/ledger';
import type { MoneyEvent } from './event.ts';
import { movesOf } from './moves.ts';

/** What is owed and held; every other account may hold anything. */
const LOOKED_AT: readonly Account['purpose'][] = ['receivable', 'deposits held', 'credit held'];

/** The accounts whose balance `post` may ask for. Of a new invoice there is nothing before. */
export function touched(event: MoneyEvent): Account[] {
  if (event.kind === 'invoice') return [];
  const moves = event.kind === 'undo' ? event.journals.flatMap(({ transfers }) => transfers) : movesOf(event);
  return moves
    .flatMap(({ from, to }) => [from, to].flatMap(withCredit))
    .filter(({ purpose }) => LOOKED_AT.includes(purpose));
}

/** What was taken from a deposit that bounced becomes owed as credit. */
function withCredit(account: Account): Account[] {
  if (account.purpose !== 'deposits held') return [account];
  return [account, { purpose: 'credit held', party: account.party }];
}
