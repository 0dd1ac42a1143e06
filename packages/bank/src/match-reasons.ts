// Why an entry is proposed for an invoice, in sentences.

import { toDecimal } from '@colla/money';
import type { BankEntry } from './entry.ts';
import type { OpenInvoice } from './open-invoices.ts';

export interface Named {
  readonly entry: BankEntry;
  /** Where the invoices are named, as `Its words name`. */
  readonly says: string;
  readonly invoices: readonly OpenInvoice[];
  /** What is owed on them, in minor units. */
  readonly owed: bigint;
  /** Others of the payer, which with these are exactly the sum. */
  readonly besides: readonly OpenInvoice[];
  /** What of the entry is beyond all of them. */
  readonly rest: bigint;
}

/** Where the payer names invoices. */
export function namedReason(named: Named): string {
  const { says, invoices, owed } = named;
  const paid = invoices.length === 1 ? ', which is paid already' : ', which are paid already';
  return `${says} ${numbers(invoices)}${owed === 0n ? paid : ''}: ${standing(named)}.`;
}

function standing({ entry, invoices, owed, besides, rest }: Named): string {
  const those = invoices.length === 1 ? 'that' : 'those';
  if (besides.length > 0) return `it pays ${owed === 0n ? '' : `${those} and `}${numbers(besides)} exactly`;
  if (owed === 0n) return 'all of it would be kept as credit';
  if (rest > 0n) return `it pays what is owed and ${sum(rest, entry)} more, which would be kept as credit`;
  if (entry.amount === owed) return 'it pays exactly what is owed';
  return `it pays ${sum(entry.amount, entry)} of the ${sum(owed, entry)} owed`;
}

/** Where the payer's name and the sum fit an invoice, the oldest of `like`; the name as the bank's or in the words. */
export function nameReason(
  entry: BankEntry,
  like: readonly OpenInvoice[],
  name: 'alike' | 'in words',
): string {
  const [{ payer = '', number = '' } = {}] = like;
  const oldest = like.length > 1 ? `, the oldest of ${like.length} such` : '';
  const why = name === 'alike' ? 'the name is alike' : 'the words have the name';
  return `${sum(entry.amount, entry)} is exactly what ${payer} owes on invoice ${number}${oldest}, and ${why}.`;
}

/** Where the name is alike and several invoices together are the sum. */
export function togetherReason(entry: BankEntry, invoices: readonly OpenInvoice[], choices: number): string {
  const payer = invoices[0]?.payer ?? '';
  const others = choices > 1 ? '; others of theirs would come to the same' : '';
  return `${sum(entry.amount, entry)} is exactly what ${payer} owes on ${numbers(invoices)}, and the name is alike${others}.`;
}

/** Where nothing but the sum fits, and it fits one invoice alone. */
export function sumReason(entry: BankEntry, { payer, number }: OpenInvoice): string {
  const name = entry.name ? `but the name is ${entry.name}` : 'but the bank gives no name';
  return `${sum(entry.amount, entry)} is owed on one invoice alone, ${number} of ${payer}, ${name}.`;
}

/** `invoice 1`, `invoices 1 and 2`, `invoices 1, 2 and 3`. */
function numbers(invoices: readonly OpenInvoice[]): string {
  const all = invoices.map(({ number }) => number);
  const last = all.pop() ?? '';
  return all.length === 0 ? `invoice ${last}` : `invoices ${all.join(', ')} and ${last}`;
}

function sum(amount: bigint, { currency }: BankEntry): string {
  return `${toDecimal(amount, currency)} ${currency}`;
}
