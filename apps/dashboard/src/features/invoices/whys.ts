// Why an invoice asks for what it asks, what is owed on it, and what became of a payment.

import type { InvoiceJson, PaymentJson } from '@colla/wire';
import { invoices as say, sayMethod } from '../../catalogue/invoices.ts';
import { sayDay, sayFigure } from '../../locale.ts';
import { sayFact, summed, takenOff, type Why } from '../../ui/index.ts';

/** The clauses' sentences as they were agreed. */
export type Sentences = readonly { readonly clause: string; readonly sentence: string }[];

export function lineWhy(
  line: InvoiceJson['lines'][number],
  { currency }: InvoiceJson,
  sentences: Sentences,
): Why {
  return {
    what: line.what,
    amount: line.amount,
    currency,
    sentence: sentenceFor(line.clause, sentences),
    about: line.on === undefined ? [] : [sayDay(line.on)],
    facts: line.facts.map(sayFact),
    arithmetic: line.arithmetic,
  };
}

export function taxWhy(
  tax: InvoiceJson['taxes'][number],
  { currency }: InvoiceJson,
  sentences: Sentences,
): Why {
  const { name, inside, base, amount, clause, arithmetic } = tax;
  return {
    what: say(inside ? 'taxInside' : 'tax', { name, base: sayFigure(base, currency) }),
    amount,
    currency,
    sentence: clause === undefined ? undefined : sentenceFor(clause, sentences),
    arithmetic,
  };
}

/** What is left of the lines without the tax inside them. */
export function netWhy(invoice: InvoiceJson, sentences: Sentences): Why {
  const inside = invoice.taxes.filter((tax) => tax.inside).map((tax) => taxWhy(tax, invoice, sentences));
  return summed({ what: say('net'), amount: invoice.net, currency: invoice.currency }, [
    ...linesOf(invoice, sentences),
    ...inside.map(takenOff),
  ]);
}

export function totalWhy(invoice: InvoiceJson, sentences: Sentences): Why {
  const added = invoice.taxes.filter((tax) => !tax.inside).map((tax) => taxWhy(tax, invoice, sentences));
  return summed({ what: say('total'), amount: invoice.total, currency: invoice.currency }, [
    ...linesOf(invoice, sentences),
    ...added,
  ]);
}

function linesOf(invoice: InvoiceJson, sentences: Sentences): Why[] {
  return invoice.lines.map((line) => lineWhy(line, invoice, sentences));
}

/** What of each payment is for this invoice. */
export function receivedWhy(invoice: InvoiceJson, payments: readonly PaymentJson[]): Why {
  const parts = payments.flatMap((payment) =>
    payment.allocations
      .filter((allocation) => allocation.invoice === invoice.id)
      .map(({ amount }): Why => ({ what: sayPayment(payment), amount, currency: payment.currency })),
  );
  const facts = parts.length === 0 ? [say('noPayments')] : [];
  return {
    ...summed({ what: say('received'), amount: invoice.paid, currency: invoice.currency }, parts),
    facts,
  };
}

/** What the invoice asks for, less what came in for it. */
export function owedWhy(invoice: InvoiceJson, sentences: Sentences, payments: readonly PaymentJson[]): Why {
  const parts = [totalWhy(invoice, sentences), takenOff(receivedWhy(invoice, payments))];
  return summed({ what: say('owed'), amount: invoice.owed, currency: invoice.currency }, parts);
}

/** What a payment was set against, and what of it is kept as credit. Numbers are those of the invoices, by id. */
export function paymentWhy(payment: PaymentJson, numbers: Readonly<Record<string, string>>): Why {
  const { amount, currency, allocations, credit } = payment;
  const set = allocations.map((allocation) => ({
    what: say('forInvoice', { number: numbers[allocation.invoice] ?? allocation.invoice }),
    amount: allocation.amount,
    currency,
    more: { to: `/invoices/${allocation.invoice}`, label: say('seeInvoice') },
  }));
  const kept = isSome(credit) ? [{ what: say('keptAsCredit'), amount: credit, currency }] : [];
  return summed({ what: sayPayment(payment), amount, currency }, [...set, ...kept]);
}

export function sayPayment({ receivedOn, method, reference }: PaymentJson): string {
  return [sayDay(receivedOn), sayMethod(method).toLowerCase(), reference].filter(Boolean).join(', ');
}

function sentenceFor(clause: string, sentences: Sentences): string | undefined {
  return sentences.find((said) => said.clause === clause)?.sentence;
}

function isSome(amount: string): boolean {
  return /[1-9]/.test(amount);
}
