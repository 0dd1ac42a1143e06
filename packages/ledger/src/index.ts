// The double-entry record behind every document and payment: accounts, transfers, journals, balances.

export {
  type Account,
  accountKey,
  INCOME_KINDS,
  type IncomeKind,
  NATURES,
  type Nature,
  PURPOSES,
  type Purpose,
  spoken,
} from './account.ts';
export { type Balance, balance, balances, fits, heldIn, type Which } from './balances.ts';
export { changesBy, type HeldBefore, partOf, partsOf, realised } from './difference.ts';
export { type ExchangeRate, eachInBook, exchangeRate, inBook } from './exchange-rate.ts';
export {
  type Journal,
  journal,
  type Posted,
  type Posting,
  postingsOf,
  type Source,
  transfersFrom,
} from './journal.ts';
export { type OpenDays, openOn } from './open-day.ts';
export { mirror, move, NOTHING, type Sum, type Transfer, transfer } from './transfer.ts';
export { type TrialBalance, type TrialRow, trialBalance, trialBalanceOf } from './trial-balance.ts';
