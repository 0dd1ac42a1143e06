// The accounts of the ledger, by what they are for.

/** What income is for. Supplements and discounts stay by themselves, so that what was given away can be seen. */
export const INCOME_KINDS = [
  'rehearsal',
  'performance',
  'package',
  'supplement',
  'discount',
  'cancellation',
  'travel recovered',
  'costs recovered',
  'other',
] as const;
export type IncomeKind = (typeof INCOME_KINDS)[number];

/**
 * An account. What is owed names who owes it and on which invoice; a deposit names the engagement it is held for and
 * whose it is; a credit names the payer. Two accounts are one where `accountKey` says so.
 */
export type Account =
  | { readonly purpose: 'receivable'; readonly party: string; readonly invoice: string }
  | { readonly purpose: 'deposits held'; readonly party: string; readonly engagement: string }
  | { readonly purpose: 'credit held'; readonly party: string }
  | { readonly purpose: 'income'; readonly kind: IncomeKind }
  /** A tax by its name: two taxes are owed to two authorities. */
  | { readonly purpose: 'tax collected'; readonly tax: string }
  | { readonly purpose: Plain };
type Plain = 'bank' | 'cash' | 'costs' | 'pay owed' | 'write-offs' | 'rounding' | 'exchange difference';
export type Purpose = Account['purpose'];

export type Nature = 'asset' | 'liability' | 'income' | 'expense';

/** What each purpose is by nature. A deposit is owed until it is earned: a liability (IFRS 15, 105–106, from memory). */
export const NATURES: Readonly<Record<Purpose, Nature>> = {
  receivable: 'asset',
  bank: 'asset',
  cash: 'asset',
  'deposits held': 'liability',
  'credit held': 'liability',
  income: 'income',
  'tax collected': 'liability',
  costs: 'expense',
  'pay owed': 'liability',
  'write-offs': 'expense',
  rounding: 'expense',
  'exchange difference': 'income',
};
export const PURPOSES = Object.keys(NATURES) as readonly Purpose[];

/** The account as one line of text that no other account has. */
export function accountKey(account: Account): string {
  switch (account.purpose) {
    case 'receivable':
      return joined(account.purpose, account.party, account.invoice);
    case 'deposits held':
      return joined(account.purpose, account.party, account.engagement);
    case 'credit held':
      return joined(account.purpose, account.party);
    case 'income':
      return joined(account.purpose, account.kind);
    case 'tax collected':
      return joined(account.purpose, account.tax);
    default:
      return account.purpose;
  }
}

/** By the one character that no text in the books can hold. */
function joined(...parts: readonly string[]): string {
  return parts.join('\u0000');
}

/**
 * A sum of debits (credits below nothing) as people speak of the account: what is owed, held, earned or spent is
 * above nothing. The way back is the same.
 */
export function spoken({ purpose }: Account, debit: bigint): bigint {
  const nature = NATURES[purpose];
  return nature === 'asset' || nature === 'expense' ? debit : -debit;
}
