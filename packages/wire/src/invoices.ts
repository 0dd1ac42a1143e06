// Invoices and payments on the wire.

import { type Invoice, type InvoiceStanding, METHODS, type Payment } from '@colla/invoicing';
import { toDecimal } from '@colla/money';
import { CATEGORIES } from '@colla/rates';
import { z } from 'zod';
import { exchangeRateInput } from './exchange-rate.ts';
import { addressLines, amount, currencyCode, day, id, text } from './words.ts';

const named = z.object({
  name: z.string(),
  address: addressLines,
  reference: z.string().optional(),
  taxNumber: z.string().optional(),
});

export const invoice = z.object({
  id,
  number: z.string(),
  engagement: id,
  title: z.string(),
  payer: z.string(),
  currency: currencyCode,
  from: named,
  to: named.extend({ party: id }),
  payTo: addressLines,
  lines: z.array(
    z.object({
      key: z.string(),
      clause: z.string(),
      what: z.string(),
      on: day.optional(),
      quantity: z.object({ count: z.int(), of: z.int() }),
      unit: z.string(),
      rate: amount,
      amount,
      /** What the amount was reckoned from. */
      facts: z.array(z.object({ name: z.string(), value: z.string() })),
      arithmetic: z.string(),
    }),
  ),
  taxes: z.array(
    z.object({
      name: z.string(),
      rate: z.number(),
      code: z.string(),
      inside: z.boolean(),
      base: amount,
      amount,
      /** Left out on invoices of before it was kept. */
      clause: z.string().optional(),
      arithmetic: z.string().optional(),
      /** What the law wants to be said beside it: “VAT is owed by the recipient”. */
      wording: z.string().optional(),
      /** The kinds of line it is not on. */
      not: z.array(z.enum(CATEGORIES)).optional(),
    }),
  ),
  net: amount,
  tax: amount,
  total: amount,
  terms: z.string().optional(),
  note: z.string().optional(),
  issuedOn: day,
  dueOn: day,
  paid: amount,
  owed: amount,
  is: z.enum(['open', 'part paid', 'overdue', 'paid']),
});
export type InvoiceJson = z.output<typeof invoice>;

export const invoiceInput = z.strictObject({
  /** The role that pays, as the statement names it. */
  payer: z.string().min(1).max(60),
  note: text.optional(),
  issuedOn: day.optional(),
  /** Where the engagement is in another currency than the books. */
  rate: exchangeRateInput.optional(),
});

export const payment = z.object({
  id,
  party: id,
  receivedOn: day,
  amount,
  currency: currencyCode,
  method: z.enum(METHODS),
  reference: z.string().optional(),
  allocations: z.array(z.object({ invoice: id, amount })),
  credit: amount,
});
export type PaymentJson = z.output<typeof payment>;

export const paymentInput = z.strictObject({
  receivedOn: day,
  amount,
  currency: currencyCode.optional(),
  method: z.enum(METHODS).default('bank transfer'),
  reference: z.string().max(140).optional(),
  /** Keeps what is more than owed as the payer's credit. */
  keepCredit: z.boolean().default(false),
  /** Where the invoice is in another currency than the books. */
  rate: exchangeRateInput.optional(),
});

/** Shows an invoice and how it stands. */
export function showInvoice(of: Invoice, standing: InvoiceStanding): InvoiceJson {
  const money = (minor: bigint) => toDecimal(minor, of.currency);
  const { series: _series, ordinal: _ordinal, ...kept } = of;
  return {
    ...kept,
    from: { ...of.from, address: [...of.from.address] },
    to: { ...of.to, address: [...of.to.address] },
    payTo: [...of.payTo],
    lines: of.lines.map(({ on, calls: _calls, category: _category, ...line }) => ({
      ...line,
      facts: [...line.facts],
      ...(on ? { on: on.toString() } : {}),
      rate: money(line.rate),
      amount: money(line.amount),
    })),
    taxes: of.taxes.map(({ not, ...tax }) => ({
      ...tax,
      ...(not ? { not: [...not] } : {}),
      base: money(tax.base),
      amount: money(tax.amount),
    })),
    net: money(of.net),
    tax: money(of.tax),
    total: money(of.total),
    issuedOn: of.issuedOn.toString(),
    dueOn: of.dueOn.toString(),
    paid: money(standing.paid),
    owed: money(standing.owed),
    is: standing.is,
  };
}

/** Shows a payment. */
export function showPayment(of: Payment): PaymentJson {
  const money = (minor: bigint) => toDecimal(minor, of.currency);
  return {
    ...of,
    receivedOn: of.receivedOn.toString(),
    amount: money(of.amount),
    credit: money(of.credit),
    allocations: of.allocations.map(({ invoice, amount }) => ({ invoice, amount: money(amount) })),
  };
}
