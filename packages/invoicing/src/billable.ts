// Bill the difference: what the statement says now, less what has been invoiced.

import type { Temporal } from '@colla/calendar';
import { type Currency, toDecimal } from '@colla/money';
import type { Line, Quantity, Statement, TaxSum, UsedFact } from '@colla/rates';

/** A line as it stands on an invoice. Amounts are minor units. */
export interface InvoiceLine {
  readonly key: string;
  readonly clause: string;
  readonly category: Line['category'];
  readonly what: string;
  readonly calls: readonly string[];
  /** The day of a journey or a cost; a line of calls has their days. */
  readonly on?: Temporal.PlainDate;
  /** What the amount was reckoned from; none of what is taken back. */
  readonly facts: readonly UsedFact[];
  readonly quantity: Quantity;
  readonly unit: string;
  readonly rate: bigint;
  readonly amount: bigint;
  readonly arithmetic: string;
}

/** A tax as it stands on an invoice. `rate` is in basis points, `code` the category of EN 16931. */
export interface InvoiceTax {
  readonly name: string;
  readonly rate: number;
  readonly code: string;
  readonly inside: boolean;
  readonly base: bigint;
  readonly amount: bigint;
  /** The clause it is charged by, what must be said beside it, and how it was reckoned. */
  readonly clause?: string;
  readonly wording?: string;
  readonly arithmetic?: string;
  /** The kinds of line it is not on, where there are any. */
  readonly not?: readonly Line['category'][];
}

/** What one payer can be asked for next. `total` is what they would pay. */
export interface Billable {
  readonly payer: string;
  readonly lines: readonly InvoiceLine[];
  readonly taxes: readonly InvoiceTax[];
  readonly net: bigint;
  readonly tax: bigint;
  readonly total: bigint;
}

/** What was asked for before, as far as the difference needs it. */
export interface Asked {
  readonly payer: string;
  readonly lines: readonly InvoiceLine[];
  readonly taxes: readonly InvoiceTax[];
}

/**
 * What is left to ask of a payer: line by line, the statement less what earlier invoices asked for under the
 * same key; tax as the statement has it, less the tax already asked for, so that the parts sum to the whole.
 */
export function billable(statement: Statement, payer: string, earlier: readonly Asked[]): Billable {
  const before = earlier.filter((invoice) => invoice.payer === payer);
  const now = statement.lines.filter((line) => line.payer === payer);
  const lines = [
    ...now.flatMap((line) => further(line, askedFor(line.key, before), statement.currency)),
    ...dropped(now, before),
  ];
  const taxes = taxesLeft(
    statement.taxes.filter((tax) => tax.payer === payer),
    before,
    statement.currency,
  );
  const sum = lines.reduce((total, line) => total + line.amount, 0n);
  const added = taxes.reduce((total, tax) => total + (tax.inside ? 0n : tax.amount), 0n);
  const tax = taxes.reduce((total, tax) => total + tax.amount, 0n);
  return { payer, lines, taxes, net: sum + added - tax, tax, total: sum + added };
}

/** Everybody the statement or an earlier invoice names, in the order they appear. */
export function payersOf(statement: Statement, earlier: readonly Asked[]): string[] {
  return [...new Set([...statement.payers.map(({ payer }) => payer), ...earlier.map(({ payer }) => payer)])];
}

/** What is left to ask of all payers together, in minor units; negative where more was asked than is owed. */
export function leftToInvoice(statement: Statement, earlier: readonly Asked[]): bigint {
  return payersOf(statement, earlier).reduce(
    (sum, payer) => sum + billable(statement, payer, earlier).total,
    0n,
  );
}

function askedFor(key: string, before: readonly Asked[]): InvoiceLine[] {
  return before.flatMap((invoice) => invoice.lines.filter((line) => line.key === key));
}

/** A line not asked for before stands as it is; one that has changed since stands as its difference. */
function further(line: Line, asked: readonly InvoiceLine[], currency: Currency): InvoiceLine[] {
  const { payer: _payer, ...whole } = line;
  if (asked.length === 0) return [whole];
  const before = asked.reduce((sum, { amount }) => sum + amount, 0n);
  if (before === line.amount) return [];
  if (before === 0n) return [whole];
  return [
    {
      ...whole,
      what: `${line.what}, changed`,
      ...sum(line.amount - before),
      arithmetic: `${line.arithmetic}; invoiced before ${toDecimal(before, currency)}`,
    },
  ];
}

/** Lines asked for before that the statement no longer has are taken back. */
function dropped(now: readonly Line[], before: readonly Asked[]): InvoiceLine[] {
  const kept = new Set(now.map((line) => line.key));
  const gone = new Map<string, InvoiceLine>();
  for (const line of before.flatMap((invoice) => invoice.lines).filter(({ key }) => !kept.has(key))) {
    const known = gone.get(line.key);
    gone.set(line.key, known ? { ...line, amount: known.amount + line.amount } : line);
  }
  return [...gone.values()]
    .filter((line) => line.amount !== 0n)
    .map((line) => ({
      ...line,
      what: `${line.what}, taken back`,
      facts: [],
      ...sum(-line.amount),
      arithmetic: 'no longer on the statement',
    }));
}

function sum(amount: bigint): Pick<InvoiceLine, 'quantity' | 'unit' | 'rate' | 'amount'> {
  return { quantity: { count: 1, of: 1 }, unit: 'difference', rate: amount, amount };
}

/** Tax now less the same tax asked for before; one that the statement no longer has is taken back. */
function taxesLeft(now: readonly TaxSum[], before: readonly Asked[], currency: Currency): InvoiceTax[] {
  const asked = before.flatMap((invoice) => invoice.taxes);
  return [...new Set([...now, ...asked].map(sameAs))]
    .map((key) => taxLeft(now.filter(isOf(key)), asked.filter(isOf(key)), currency))
    .filter((tax) => tax.base !== 0n || tax.amount !== 0n);
}

/** What tells one tax from another. */
function sameAs({ name, rate, code, inside, wording }: Omit<InvoiceTax, 'base' | 'amount'>): string {
  return JSON.stringify([name, rate, code, inside, wording]);
}

function isOf(key: string): (tax: InvoiceTax) => boolean {
  return (tax) => sameAs(tax) === key;
}

/** One tax, which at least one of the two lists has. */
function taxLeft(now: readonly TaxSum[], asked: readonly InvoiceTax[], currency: Currency): InvoiceTax {
  const [tax] = [...now, ...asked];
  if (!tax) throw new Error('a tax that nobody owes was to be reckoned');
  const { name, rate, code, inside, clause, wording } = tax;
  const not = notOnAny([...now, ...asked]);
  const before = asked.length > 0 ? [`invoiced before ${toDecimal(sumOf(asked, 'amount'), currency)}`] : [];
  return {
    ...{ name, rate, code, inside },
    base: sumOf(now, 'base') - sumOf(asked, 'base'),
    amount: sumOf(now, 'amount') - sumOf(asked, 'amount'),
    ...(clause === undefined ? {} : { clause }),
    ...(wording === undefined ? {} : { wording }),
    ...(not === undefined || not.length === 0 ? {} : { not }),
    arithmetic: [...now.map(({ arithmetic }) => arithmetic), ...before].join('; '),
  };
}

/** The kinds of line that a tax neither is on nor was on: a line that fell had its tax all the same. */
function notOnAny(taxes: readonly InvoiceTax[]): InvoiceTax['not'] {
  const [first, ...others] = taxes.map(({ not }) => not);
  return first?.filter((category) => others.every((not) => not?.includes(category)));
}

function sumOf(taxes: readonly InvoiceTax[], part: 'base' | 'amount'): bigint {
  return taxes.reduce((sum, tax) => sum + tax[part], 0n);
}
