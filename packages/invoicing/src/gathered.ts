// Several engagements of one payer on one document: one number and one due day, a section for each engagement. In the
// books every section is an invoice of its own, so that deposits, differences and payments find what is theirs.

import { Temporal } from '@colla/calendar';
import { type OrRefusal, Refusal } from '@colla/refusal';
import type { InvoiceTax } from './billable.ts';
import { type Invoice, type InvoiceDraft, issue } from './invoice.ts';

/**
 * Puts drafts of one day under one number, in the order given. All are due when the last of them would be: no part is
 * due before its own terms say. Refuses drafts to different payers or in different currencies.
 */
export function gather(drafts: readonly InvoiceDraft[]): OrRefusal<InvoiceDraft[]> {
  const [first] = drafts;
  if (!first) return nothingToGather();
  const other = drafts.find(({ to }) => to.party !== first.to.party);
  if (other) return otherPayer(first, other);
  const foreign = drafts.find(({ currency }) => currency !== first.currency);
  if (foreign) return otherCurrency(first, foreign);
  if (drafts.some(({ issuedOn }) => !issuedOn.equals(first.issuedOn)))
    throw new Error('a document was to be issued on two days');
  const dueOn = drafts.map(({ dueOn }) => dueOn).reduce(later);
  return drafts.map((draft) => ({ ...draft, dueOn }));
}

function later(one: Temporal.PlainDate, other: Temporal.PlainDate): Temporal.PlainDate {
  return Temporal.PlainDate.compare(one, other) < 0 ? other : one;
}

/** The sections of the document, under the next number of its series; an id for each. */
export function issueGathered(
  sections: readonly InvoiceDraft[],
  { ids, ...as }: { readonly ids: readonly string[]; readonly series: string; readonly ordinal: number },
): Invoice[] {
  if (ids.length !== sections.length) throw new Error('a section without an id of its own');
  return sections.map((draft, index) => issue(draft, { ...as, id: ids[index] ?? '', section: index + 1 }));
}

/** What a document comes to in all. Minor units. */
export interface DocumentSums {
  readonly net: bigint;
  readonly tax: bigint;
  readonly total: bigint;
  /** Each rate of each tax once, as a document must show them (EN 16931, business group 23, from memory). */
  readonly taxes: readonly InvoiceTax[];
}

/** The sums of a document's sections; of an invoice by itself, its own. */
export function documentSums(sections: readonly Invoice[]): DocumentSums {
  const sum = (part: 'net' | 'tax' | 'total') => sections.reduce((so, of) => so + of[part], 0n);
  const taxes = new Map<string, InvoiceTax>();
  for (const tax of sections.flatMap((section) => section.taxes)) {
    const { name, rate, code, inside, wording } = tax;
    const key = JSON.stringify([name, rate, code, inside, wording]);
    const { base, amount } = taxes.get(key) ?? { base: 0n, amount: 0n };
    const one = { name, rate, code, inside, ...(wording === undefined ? {} : { wording }) };
    taxes.set(key, { ...one, base: base + tax.base, amount: amount + tax.amount });
  }
  return { net: sum('net'), tax: sum('tax'), total: sum('total'), taxes: [...taxes.values()] };
}

function nothingToGather(): Refusal {
  return new Refusal(
    'invoicing/nothing-to-invoice',
    'Nothing is chosen that could be invoiced together. Choose engagements of one payer with something left to ask for.',
    {},
  );
}

function otherPayer({ to: { name } }: InvoiceDraft, { to, title }: InvoiceDraft): Refusal {
  return new Refusal(
    'invoicing/other-payer',
    `“${title}” is paid by ${to.name}, the first one by ${name}. Put engagements of one payer on one invoice.`,
    { payer: to.party },
    '/engagements',
  );
}

function otherCurrency(first: InvoiceDraft, { title, currency }: InvoiceDraft): Refusal {
  return new Refusal(
    'invoicing/other-currency',
    `“${title}” is in ${currency}, the first one in ${first.currency}. Put engagements in one currency on one invoice.`,
    { currency },
    '/engagements',
  );
}
