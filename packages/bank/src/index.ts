// What banks read and write: account numbers, payment references, the square to scan, statements of an account.

export { type Known, type Sorted, sortOut } from './brought-in.ts';
export { readCamt } from './camt.ts';
export { DATE_ORDERS, type DateOrder, DECIMAL_MARKS, type DecimalMark } from './cells.ts';
export { inFours } from './check.ts';
export {
  type CreditorReference,
  creditorReference,
  creditorReferencesIn,
  readCreditorReference,
} from './creditor-reference.ts';
export { readCsv } from './csv.ts';
export type { Balance, BankEntry, BankStatement } from './entry.ts';
export { type Iban, looksLikeIban, readIban } from './iban.ts';
export type { Mapping, SidedSum, SignedSum, SumColumns, TwoSums } from './mapping.ts';
export { matchEntries } from './match.ts';
export type { Match, Strength } from './match-ways.ts';
export type { OpenInvoice, Share } from './open-invoices.ts';
export { type OpenMapping, proposeMapping, type Unmapped } from './propose-mapping.ts';
export { DELIMITERS, type Delimiter, type Row } from './rows.ts';
export { type CreditTransfer, scanToPay } from './scan-to-pay.ts';
export { type Square, squareOf } from './square.ts';
export { LARGEST_FILE, textOf } from './text.ts';
