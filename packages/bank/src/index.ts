// What banks read: account numbers, payment references, and the square to scan.

export { inFours } from './check.ts';
export {
  type CreditorReference,
  creditorReference,
  creditorReferencesIn,
  readCreditorReference,
} from './creditor-reference.ts';
export { type Iban, looksLikeIban, readIban } from './iban.ts';
export { scanToPay, type Transfer } from './scan-to-pay.ts';
