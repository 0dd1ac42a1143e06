// Money on the wire: payments over several invoices, credit, what is given up or taken back, and the ledger behind it.

import { type AccountStatement, AGES, type Aged, METHODS, WRITE_OFF_REASONS } from '@colla/invoicing';
import { type Account, type Journal, PURPOSES, type TrialBalance } from '@colla/ledger';
import { type Currency, toDecimal } from '@colla/money';
import { z } from 'zod';
import { exchangeRateInput } from './exchange-rate.ts';
import { paymentInput } from './invoices.ts';
import { amount, currencyCode, day, id } from './words.ts';

const against = z.union([
  z.literal('oldest first'),
  z
    .array(z.strictObject({ invoice: id, amount }))
    .min(1)
    .max(500),
]);

export type AgainstSent = z.output<typeof against>;

/** Money of one payer: oldest invoice first, or so much for each invoice that is named. */
export const partyPaymentInput = paymentInput.extend({ against: against.default('oldest first') });

export const creditUse = z.strictObject({
  on: day,
  /** Of the books where it is left out. */
  currency: currencyCode.optional(),
  against: against.default('oldest first'),
});

export const refundInput = z.strictObject({
  on: day,
  amount,
  currency: currencyCode.optional(),
  method: z.enum(METHODS).default('bank transfer'),
  reference: z.string().max(140).optional(),
  rate: exchangeRateInput.optional(),
});

export const writeOffInput = z.strictObject({
  on: day,
  /** All that is owed where it is left out. */
  amount: amount.optional(),
  reason: z.enum(WRITE_OFF_REASONS),
  note: z.string().max(400).optional(),
});

export const undoInput = z.strictObject({
  on: day,
  because: z.enum(['bounced', 'entered by mistake']),
  note: z.string().max(400).optional(),
});

const account = z.object({
  purpose: z.enum(PURPOSES as [Account['purpose'], ...Account['purpose'][]]),
  party: id.optional(),
  invoice: id.optional(),
  engagement: id.optional(),
  /** Of income its kind, of tax its name. */
  of: z.string().optional(),
});

/** A journal: what one document or movement of money did. Each transfer credits `from` and debits `to`. */
export const journal = z.object({
  /** The id of the record it posts. */
  id,
  on: day,
  event: z.string(),
  source: z.string(),
  /** The record that it takes back. */
  takesBack: id.optional(),
  currency: currencyCode,
  book: currencyCode,
  rate: z.object({ rate: z.string(), on: day, source: z.string() }).optional(),
  transfers: z.array(z.object({ from: account, to: account, amount, book: amount })),
  /** What was said that is no figure: how the money went, its reference, the reason. */
  said: z.record(z.string(), z.string()),
  takenBack: z.boolean(),
});
export type JournalJson = z.output<typeof journal>;

export const accountStatement = z.object({
  party: id,
  currency: currencyCode,
  from: day,
  to: day,
  opening: amount,
  entries: z.array(
    z.object({ on: day, event: z.string(), source: z.string(), record: id, amount, balance: amount }),
  ),
  closing: amount,
  credit: amount,
  deposits: amount,
});
export type AccountStatementJson = z.output<typeof accountStatement>;

const ages = z.object(
  Object.fromEntries(AGES.map((age) => [age, amount])) as Record<(typeof AGES)[number], typeof amount>,
);

/** What each payer owes in one currency, by how late it is; who owes nothing and has no credit is left out. */
export const ageing = z.object({
  asAt: day,
  payers: z.array(
    z.object({
      party: id,
      name: z.string(),
      currency: currencyCode,
      owed: ages,
      credit: amount,
      deposits: amount,
      total: amount,
    }),
  ),
});
export type AgeingJson = z.output<typeof ageing>;

/** In the currency of the books. */
export const trialBalance = z.object({
  asAt: day,
  currency: currencyCode,
  rows: z.array(z.object({ purpose: z.string(), of: z.string().optional(), debit: amount, credit: amount })),
  total: amount,
});
export type TrialBalanceJson = z.output<typeof trialBalance>;

interface Kept {
  readonly journal: Journal;
  readonly said: Readonly<Record<string, string>>;
  readonly takenBack: boolean;
}

/** Shows a journal. */
export function showJournal({ journal: of, said, takenBack }: Kept): JournalJson {
  const { id, on, event, source, takesBack, currency, book, rate } = of;
  return {
    ...{ id, event, currency, book, on: on.toString(), source: source.kind },
    ...(takesBack ? { takesBack: takesBack.id } : {}),
    ...(rate ? { rate: { rate: rate.rate, on: rate.on.toString(), source: rate.source } } : {}),
    said: { ...said },
    takenBack,
    transfers: of.transfers.map((each) => ({
      from: showAccount(each.from),
      to: showAccount(each.to),
      amount: toDecimal(each.amount, currency),
      book: toDecimal(each.book, book),
    })),
  };
}

function showAccount(of: Account): JournalJson['transfers'][number]['from'] {
  switch (of.purpose) {
    case 'income':
      return { purpose: of.purpose, of: of.kind };
    case 'tax collected':
      return { purpose: of.purpose, of: of.tax };
    default:
      return of;
  }
}

/** Shows what made a payer owe more or less, and what is kept of theirs. */
export function showAccountStatement(of: AccountStatement, credit: bigint): AccountStatementJson {
  const { party, currency, from, to } = of;
  const money = (minor: bigint) => toDecimal(minor, currency);
  return {
    ...{ party, currency, from: from.toString(), to: to.toString() },
    opening: money(of.opening),
    entries: of.entries.map(({ on, event, source, amount, balance }) => ({
      ...{ on: on.toString(), event, source: source.kind, record: source.id },
      amount: money(amount),
      balance: money(balance),
    })),
    closing: money(of.closing),
    credit: money(credit),
    deposits: money(of.deposits),
  };
}

/** Shows what a payer owes, by how late it is. */
export function showAged({ owed, ...of }: Aged, name: string): AgeingJson['payers'][number] {
  const money = (minor: bigint) => toDecimal(minor, of.currency);
  const [credit, deposits, total] = [of.credit, of.deposits, of.total].map(money) as [string, string, string];
  const byAge = Object.fromEntries(
    AGES.map((age) => [age, money(owed[age])]),
  ) as AgeingJson['payers'][number]['owed'];
  return { party: of.party, name, currency: of.currency, owed: byAge, credit, deposits, total };
}

/** Shows the trial balance at the end of a day. */
export function showTrialBalance(
  { rows, total }: TrialBalance,
  asAt: string,
  currency: Currency,
): TrialBalanceJson {
  const money = (minor: bigint) => toDecimal(minor, currency);
  return {
    ...{ asAt, currency },
    rows: rows.map((row) => ({ ...row, debit: money(row.debit), credit: money(row.credit) })),
    total: money(total),
  };
}
