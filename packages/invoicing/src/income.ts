// What the lines and taxes of a document are in the ledger: income by kind, and tax that is not ours.

import type { Account, IncomeKind } from '@colla/ledger';
import type { InvoiceLine, InvoiceTax } from './billable.ts';

/** What an amount on a document becomes. Of either sign: a discount and a credit are below nothing. */
export interface Earned {
  readonly account: Account;
  readonly amount: bigint;
}

type Category = InvoiceLine['category'];

/** The kind of income each kind of line is. Hours covered by an entitlement are bought together, as a package is. */
export const KIND_OF: Readonly<Record<Category, IncomeKind>> = {
  rehearsal: 'rehearsal',
  performance: 'performance',
  package: 'package',
  entitlement: 'package',
  supplement: 'supplement',
  discount: 'discount',
  cancellation: 'cancellation',
  travel: 'travel recovered',
  cost: 'costs recovered',
  other: 'other',
};

/**
 * Income by kind and taxes by name, which together are what the document asks for. A tax inside the prices is taken
 * out of the income of the lines it is on, in proportion, to the last minor unit (largest remainder).
 */
export function earned({
  lines,
  taxes,
}: {
  readonly lines: readonly InvoiceLine[];
  readonly taxes: readonly InvoiceTax[];
}): Earned[] {
  const kinds = sumsByKind(lines);
  for (const { amount, not } of taxes.filter(({ inside }) => inside)) {
    const taxed = sumsByKind(lines.filter(({ category }) => !not?.includes(category)));
    if (taxed.size === 0) taxed.set('other', 0n);
    const shares = shareOut(amount, [...taxed.values()]);
    for (const [index, kind] of [...taxed.keys()].entries())
      kinds.set(kind, (kinds.get(kind) ?? 0n) - (shares[index] ?? 0n));
  }
  return [
    ...[...kinds].map(([kind, amount]) => ({ account: { purpose: 'income' as const, kind }, amount })),
    ...taxes.map(({ name, amount }) => ({
      account: { purpose: 'tax collected' as const, tax: name },
      amount,
    })),
  ].filter(({ amount }) => amount !== 0n);
}

function sumsByKind(lines: readonly InvoiceLine[]): Map<IncomeKind, bigint> {
  const sums = new Map<IncomeKind, bigint>();
  for (const { category, amount } of lines)
    sums.set(KIND_OF[category], (sums.get(KIND_OF[category]) ?? 0n) + amount);
  return sums;
}

/**
 * Shares an amount out in proportion to sums that may be below nothing, as a discount is: largest remainder, ties to
 * the earlier; the opposite amount is shared out as the opposite. Where the sums cancel out there is no proportion,
 * and the first takes it all. (`allocate` of money shares among people, of whom none can have less than nothing.)
 */
export function shareOut(amount: bigint, sums: readonly bigint[]): bigint[] {
  const whole = sums.reduce((so, sum) => so + sum, 0n);
  if (whole === 0n) return sums.map((_, index) => (index === 0 ? amount : 0n));
  if (amount < 0n) return shareOut(-amount, sums).map((share) => -share);
  const exact = sums.map((sum) => (whole < 0n ? -amount * sum : amount * sum));
  const size = whole < 0n ? -whole : whole;
  const shares = exact.map((share) => floor(share, size));
  const left = Number(amount - shares.reduce((so, share) => so + share, 0n));
  const remainder = (index: number) => (exact[index] ?? 0n) - (shares[index] ?? 0n) * size;
  const order = [...shares.keys()].sort((a, b) => Number(remainder(b) - remainder(a)) || a - b);
  for (const index of order.slice(0, left)) shares[index] = (shares[index] ?? 0n) + 1n;
  return shares;
}

/** The whole number at or below a quotient; `of` is above nothing. */
function floor(numerator: bigint, of: bigint): bigint {
  const quotient = numerator / of;
  return numerator < 0n && quotient * of !== numerator ? quotient - 1n : quotient;
}
