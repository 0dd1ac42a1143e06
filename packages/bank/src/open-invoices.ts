// The invoices that entries may pay: found by what a payer writes, with what is still owed as entry after entry is matched.

import { Temporal } from '@colla/calendar';
import type { Currency } from '@colla/money';
import type { CreditorReference } from './creditor-reference.ts';
import { namesAlike, nameWords } from './names.ts';

/** An invoice and what is owed on it, in minor units. One that is paid owes nothing, and tells of whom pays it again. */
export interface OpenInvoice {
  readonly invoice: string;
  readonly number: string;
  readonly reference?: CreditorReference;
  readonly party: string;
  /** The payer's name, as on the invoice. */
  readonly payer: string;
  readonly owed: bigint;
  readonly currency: Currency;
  readonly issuedOn: Temporal.PlainDate;
}

/** So much for an invoice, in minor units. */
export interface Share {
  readonly invoice: string;
  readonly amount: bigint;
}

/** Lists are oldest first: by the day of issue, and on one day by number. */
export class OpenInvoices {
  readonly #byReference = new Map<string, OpenInvoice>();
  readonly #byNumber = new Map<string, OpenInvoice>();
  readonly #bySum = new Map<string, OpenInvoice[]>();
  readonly #byParty = new Map<string, OpenInvoice[]>();
  /** The names by which each payer goes, as words. */
  readonly #names = new Map<string, Map<string, readonly string[]>>();
  readonly #taken = new Map<string, bigint>();

  constructor(invoices: readonly OpenInvoice[]) {
    for (const invoice of invoices.toSorted(byAge)) {
      if (invoice.reference) this.#byReference.set(invoice.reference, invoice);
      for (const key of keysOf(invoice.number)) this.#byNumber.set(key, invoice);
      addTo(this.#bySum, `${invoice.owed} ${invoice.currency}`, invoice);
      addTo(this.#byParty, invoice.party, invoice);
      this.#learn(invoice);
    }
  }

  #learn({ party, payer }: OpenInvoice): void {
    const names = this.#names.get(party) ?? new Map<string, readonly string[]>();
    if (!names.has(payer)) names.set(payer, nameWords(payer));
    this.#names.set(party, names);
  }

  /** What of an invoice no entry has been set against yet. */
  owedOn({ invoice, owed }: OpenInvoice): bigint {
    return owed - (this.#taken.get(invoice) ?? 0n);
  }

  take(shares: readonly Share[]): void {
    for (const { invoice, amount } of shares) {
      this.#taken.set(invoice, (this.#taken.get(invoice) ?? 0n) + amount);
    }
  }

  /** Those that carry one of the references. */
  referredTo(references: readonly CreditorReference[]): OpenInvoice[] {
    return oldestFirst(references.flatMap((reference) => this.#byReference.get(reference) ?? []));
  }

  /** Those whose number stands in one of the texts, as a word or as words beside one another. */
  numberedIn(texts: readonly string[]): OpenInvoice[] {
    return oldestFirst(texts.flatMap(spansOf).flatMap((span) => this.#byNumber.get(span) ?? []));
  }

  /** Those of which exactly so much is owed and nothing has been taken. */
  owing(amount: bigint, currency: Currency): OpenInvoice[] {
    return (this.#bySum.get(`${amount} ${currency}`) ?? []).filter(
      ({ invoice }) => !this.#taken.has(invoice),
    );
  }

  /** Those of one payer in one currency on which something is owed. */
  of(party: string, currency: Currency): OpenInvoice[] {
    const all = this.#byParty.get(party) ?? [];
    return all.filter((invoice) => invoice.currency === currency && this.owedOn(invoice) > 0n);
  }

  /** The payers who go by a name like this one, given as its words. */
  partiesLike(words: readonly string[]): string[] {
    return [...this.#names.keys()].filter((party) => this.isLike(party, words));
  }

  /** Whether one payer goes by a name like this one. */
  isLike(party: string, words: readonly string[]): boolean {
    return [...(this.#names.get(party)?.values() ?? [])].some((name) => namesAlike(name, words));
  }
}

/** All words of a text, and all runs of up to four: a number has no more parts. */
function spansOf(text: string): string[] {
  const words = text.toUpperCase().match(/[0-9A-Z]+/g) ?? [];
  return words.flatMap((_, at) => [1, 2, 3, 4].map((length) => words.slice(at, at + length).join(' ')));
}

/** A shorter number stands in many texts by chance. */
const SHORTEST = 4;

/** How payers write a number: its parts apart, whatever stands between them, or run together. */
function keysOf(number: string): string[] {
  const parts = number.toUpperCase().match(/[0-9A-Z]+/g) ?? [];
  const joined = parts.join('');
  return joined.length < SHORTEST ? [] : [parts.join(' '), joined];
}

/** A longer number is a later one: 10000 comes after 9999. */
function byAge(one: OpenInvoice, other: OpenInvoice): number {
  return (
    Temporal.PlainDate.compare(one.issuedOn, other.issuedOn) ||
    one.number.length - other.number.length ||
    (one.number < other.number ? -1 : 1)
  );
}

function addTo(lists: Map<string, OpenInvoice[]>, key: string, invoice: OpenInvoice): void {
  const list = lists.get(key);
  if (list) list.push(invoice);
  else lists.set(key, [invoice]);
}

function oldestFirst(invoices: readonly OpenInvoice[]): OpenInvoice[] {
  return [...new Set(invoices)].sort(byAge);
}
