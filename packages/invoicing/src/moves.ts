// What each event moves: from which account to which, and how much.

import type { Account } from '@colla/ledger';
import type { Allocation } from './allocation.ts';
import type { CreditNote } from './credit-note.ts';
import type { MoneyEvent } from './event.ts';
import { earned } from './income.ts';
import type { Invoice } from './invoice.ts';
import type { Method } from './payment.ts';
import type { WriteOff } from './write-off.ts';

/** An amount of the event's currency, of either sign, in minor units. `from` is credited and `to` is debited. */
export interface Move {
  readonly from: Account;
  readonly to: Account;
  readonly amount: bigint;
  /** Whose business it was and what for, where the accounts do not say so themselves. */
  readonly party?: string;
  readonly engagement?: string;
}

/** What an event moves. What an undo moves is read off the journals that it takes back. */
export function movesOf({ kind, record }: Exclude<MoneyEvent, { kind: 'undo' }>): Move[] {
  switch (kind) {
    case 'invoice':
      return asked(record, owedBy(record.to.party, record.id));
    case 'credit note':
      return credited(record);
    case 'payment':
      return [...settled(record, moneyIn(record)), kept(record)];
    case 'deposit':
      return [came(record, depositOf(record), record.amount - record.credit), kept(record)];
    case 'deposit applied':
      return settled(record, depositOf(record));
    case 'deposit returned':
      return [went(record, depositOf(record))];
    case 'credit applied':
      return settled(record, creditOf(record));
    case 'refund':
      return [went(record, creditOf(record))];
    case 'write-off':
      return [{ ...about(record), from: owedOn(record), to: givenUpFor(record), amount: record.amount }];
    case 'late interest':
      return [{ ...about(record), from: OTHER_INCOME, to: owedOn(record), amount: record.amount }];
  }
}

/** Income and tax asked for, as a debt of the payer; below nothing it is taken back. */
function asked(document: Pick<Invoice, 'lines' | 'taxes' | 'engagement' | 'to'>, owed: Account): Move[] {
  const { engagement, to } = document;
  return earned(document).map(({ account: from, amount }) => ({
    ...{ from, to: owed, amount },
    ...{ party: to.party, engagement },
  }));
}

/** What is given back is a credit of the payer first, and that settles what the credit note stands against. */
function credited(note: CreditNote): Move[] {
  const { party } = note.to;
  const credit = creditOf({ party });
  return [...asked(note, credit), ...settled({ party, allocations: note.against }, credit)];
}

/** Debts that are settled, from wherever the money for it comes. */
function settled(
  { party, allocations }: { readonly party: string; readonly allocations: readonly Allocation[] },
  to: Account,
): Move[] {
  return allocations.map(({ invoice, amount }) => ({ from: owedBy(party, invoice), to, amount, party }));
}

/** What of money that came was for nothing yet. */
function kept(of: Money & { readonly credit: bigint }): Move {
  return came(of, creditOf(of), of.credit);
}

interface Money {
  readonly party: string;
  readonly engagement?: string;
  readonly method: Method;
}

function came(of: Money, from: Account, amount: bigint): Move {
  return { ...about(of), from, to: moneyIn(of), amount };
}

function went(of: Money & { readonly amount: bigint }, to: Account): Move {
  return { ...about(of), from: moneyIn(of), to, amount: of.amount };
}

function about({ party, engagement }: { readonly party: string; readonly engagement?: string }) {
  return { party, ...(engagement === undefined ? {} : { engagement }) };
}

const OTHER_INCOME: Account = { purpose: 'income', kind: 'other' };

function owedOn({ party, invoice }: { readonly party: string; readonly invoice: string }): Account {
  return owedBy(party, invoice);
}

function owedBy(party: string, invoice: string): Account {
  return { purpose: 'receivable', party, invoice };
}

function creditOf({ party }: { readonly party: string }): Account {
  return { purpose: 'credit held', party };
}

function depositOf({ party, engagement }: { readonly party: string; readonly engagement: string }): Account {
  return { purpose: 'deposits held', party, engagement };
}

/** Where money of each method lies: a cheque and a card end at the bank. */
function moneyIn({ method }: { readonly method: Method }): Account {
  return { purpose: method === 'cash' ? 'cash' : 'bank' };
}

function givenUpFor({ reason }: Pick<WriteOff, 'reason'>): Account {
  return { purpose: reason === 'rounding' ? 'rounding' : 'write-offs' };
}
