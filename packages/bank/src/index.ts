// What banks read and write: account numbers, payment references, the square to scan, statements of an account.

export { readCamt } from './camt.ts';
export { inFours } from './check.ts';
export {
  type CreditorReference,
  creditorReference,
  creditorReferencesIn,
  readCreditorReference,
} from './creditor-reference.ts';
export type { Balance, BankStatement, Entry } from './entry.ts';
export { type Iban, looksLikeIban, readIban } from './iban.ts';
export { scanToPay, type Transfer } from './scan-to-pay.ts';
export { LARGEST_FILE, textOf } from './text.ts';
