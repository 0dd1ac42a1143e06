// Random histories for the tests of this room: a model that keeps nothing but sums, beside the books themselves. After
// each step both must say the same.

import type { Temporal } from '@colla/calendar';
import type { Agreed, Cancelled, Engagement, Settled } from '@colla/engagements';
import { balances, type Journal } from '@colla/ledger';
import { type Currency, currency } from '@colla/money';
import type { Statement } from '@colla/rates';
import { granted, type OrRefusal, refused } from '@colla/refusal';
import type { OpenInvoice } from './allocation.ts';
import { emptyBooks } from './books.fixture.ts';
import type { CreditNote } from './credit-note.ts';
import { BY_THE_HOUR, day, engaged, POUND, statementOfAll } from './engaged.fixture.ts';
import type { MoneyEvent } from './event.ts';
import type { Invoice } from './invoice.ts';
import type { Undoable } from './undo.ts';

export const EURO = granted(currency('EUR'));

/** What an event changes: sums by what they are of, such as `owed i1`, `credit p1 GBP`, `money EUR`. */
export type Delta = readonly (readonly [of: string, by: bigint])[];

interface ModelEngagement {
  readonly id: string;
  readonly party: string;
  readonly currency: Currency;
  /** What its documents ask for, less what they give back. */
  asked: bigint;
}

interface ModelInvoice {
  readonly id: string;
  readonly of: ModelEngagement;
  readonly total: bigint;
  taken: boolean;
}

/** What the model knows: sums, and what they were changed by. It reckons no price and keeps no accounts. */
export class Model {
  today = 0;
  changes = 0;
  readonly sums = new Map<string, bigint>();
  readonly engagements: ModelEngagement[] = [];
  /** In the order of issue. */
  readonly invoices: ModelInvoice[] = [];
  readonly records: {
    readonly kind: Undoable;
    readonly id: string;
    readonly delta: Delta;
    undone: boolean;
  }[] = [];
  readonly numbers = new Map<string, number>();
  private ids = 0;

  newId(): string {
    this.ids += 1;
    return `r${this.ids}`;
  }

  /** The next number of a series: the only place that counts. */
  next(series: string): { id: string; series: string; ordinal: number } {
    const ordinal = (this.numbers.get(series) ?? 0) + 1;
    this.numbers.set(series, ordinal);
    return { id: this.newId(), series, ordinal };
  }

  sum(of: string): bigint {
    return this.sums.get(of) ?? 0n;
  }

  apply(delta: Delta): void {
    this.changes += 1;
    for (const [of, by] of delta) this.sums.set(of, this.sum(of) + by);
  }

  /** What is open of a payer in one currency, oldest first; of one engagement only, where it is named. */
  open(
    { party, currency }: Pick<ModelEngagement, 'party' | 'currency'>,
    engagement?: string,
  ): ModelInvoice[] {
    return this.invoices.filter(
      ({ id, of }) =>
        of.party === party &&
        of.currency === currency &&
        (engagement === undefined || of.id === engagement) &&
        this.sum(`owed ${id}`) > 0n,
    );
  }

  /** Sets money against invoices in the order given: what each loses, and what is left. */
  settle(amount: bigint, invoices: readonly ModelInvoice[]): { delta: Delta; left: bigint } {
    let left = amount;
    const delta = invoices.map(({ id }): [string, bigint] => {
      const owed = this.sum(`owed ${id}`);
      const enough = owed <= left;
      const part = enough ? owed : left;
      left -= part;
      return [`owed ${id}`, -part];
    });
    return { delta, left };
  }
}

/** The books, and the records they were made from. */
export class World {
  readonly books = emptyBooks();
  readonly engagements = new Map<string, Engagement>();
  readonly documents = new Map<string, (Invoice | CreditNote)[]>();
  readonly invoices = new Map<string, Invoice>();
  readonly journals = new Map<string, Journal>();

  /** Every invoice with what the ledger says is owed on it. */
  open(): OpenInvoice[] {
    return [...this.invoices.values()].map((invoice) => this.books.open(invoice));
  }

  documentsOf(engagement: string): (Invoice | CreditNote)[] {
    return this.documents.get(engagement) ?? [];
  }

  file(document: Invoice | CreditNote): void {
    this.documents.set(document.engagement, [...this.documentsOf(document.engagement), document]);
  }

  enter(event: MoneyEvent, today: number): void {
    const rate = {
      ...{ from: EURO, to: POUND, on: dayOf(today), source: 'the bank' },
      rate: `0.${60 + ((today * 7) % 40)}`,
    };
    const journal = this.books.enter(event, rate);
    this.journals.set(event.record.id, journal);
  }
}

/** The day of a step: documents are issued one day after the other, once everything agreed at first could be played. */
export function dayOf(today: number): Temporal.PlainDate {
  return day('04-01').add({ days: today });
}

const CALLS = [
  ['c1', 'rehearsal', '02-02T10:00'],
  ['c2', 'rehearsal', '02-16T10:00'],
  ['c3', 'recital', '03-09T10:00'],
] as const;

/** Plain, in another currency with tax on top, and another payer's with tax inside what it is on. */
export const KINDS: readonly { readonly agreed: Agreed; readonly party: string }[] = [
  { party: 'p1', agreed: engaged(BY_THE_HOUR, CALLS) },
  {
    party: 'p1',
    agreed: engaged([...BY_THE_HOUR, { id: 'tax', kind: 'tax', terms: { name: 'VAT', rate: 1900 } }], CALLS, {
      currency: EURO,
    }),
  },
  {
    party: 'p2',
    agreed: engaged(
      [
        ...BY_THE_HOUR,
        { id: 'tax', kind: 'tax', terms: { name: 'VAT', rate: 2000, inside: true, not: ['rehearsal'] } },
        { id: 'ten', kind: 'discount', terms: { what: 'Regular', by: { as: 'share', share: 1000 } } },
      ],
      CALLS,
      { payers: { payer: 'p2' } },
    ),
  },
];

const known = new WeakMap<Engagement['calls'], Statement>();

/** What an engagement comes to. Only its calls change in a history, so each list of them is priced once. */
export function statementFor(engagement: Agreed | Cancelled | Settled): Statement {
  const seen = known.get(engagement.calls) ?? statementOfAll(engagement);
  known.set(engagement.calls, seen);
  return seen;
}

/** The value of an answer; of one that is to be refused, only that it was by this code. */
export function answered<T>(answer: OrRefusal<T>, code: string | undefined): T | undefined {
  const said = refused(answer) ? answer.code : undefined;
  if (said !== code) throw new Error(`expected ${code ?? 'a yes'}, was ${said ?? 'a yes'}`);
  return refused(answer) ? undefined : answer;
}

/** Whether books and model say the same, and the books what no event may break. */
export function mustAgree(model: Model, { books, documents }: World): void {
  const inBooks = new Map<string, bigint>();
  const sides = new Map<string, bigint>();
  for (const { amount, book, currency } of books.posted) {
    sides.set(currency, (sides.get(currency) ?? 0n) + amount);
    sides.set('the book', (sides.get('the book') ?? 0n) + book);
  }
  for (const { account, currency, amount, book } of balances(books.posted)) {
    const of = nameOf(account, currency);
    if (amount === 0n && book !== 0n && account.purpose !== 'exchange difference' && 'party' in account)
      throw new Error(`${of} is nothing, and stands at ${book} in the book`);
    inBooks.set(of, (inBooks.get(of) ?? 0n) + amount);
  }
  for (const [of, sum] of sides) if (sum !== 0n) throw new Error(`${of} does not balance: ${sum}`);
  for (const of of new Set([...inBooks.keys(), ...model.sums.keys()])) {
    const [books, sums] = [inBooks.get(of) ?? 0n, model.sum(of)];
    if (books !== sums) throw new Error(`${of} is ${books} in the books and ${sums} by the model`);
    if (/^(owed|deposit)/.test(of) && books < 0n) throw new Error(`${of} is below nothing: ${books}`);
  }
  mustBeWhole(model, [...documents.values()].flat());
}

/** No number missing, none twice; and what is asked for is what the documents say. */
function mustBeWhole(model: Model, documents: readonly (Invoice | CreditNote)[]): void {
  for (const [series, last] of model.numbers) {
    const ordinals = documents
      .filter((of) => of.series === series && !('section' in of && of.section !== 1))
      .map(({ ordinal }) => ordinal);
    const whole =
      ordinals.length === last && new Set(ordinals).size === last && Math.max(...ordinals) === last;
    if (!whole) throw new Error(`series ${series} is not whole: ${ordinals.join()}`);
  }
  for (const { id, asked } of model.engagements) {
    const sum = documents.filter((of) => of.engagement === id).reduce((so, { total }) => so + total, 0n);
    if (sum !== asked) throw new Error(`documents of ${id} ask for ${sum}, not for ${asked}`);
  }
}

type Held = ReturnType<typeof balances>[number]['account'];

function nameOf(account: Held, currency: Currency): string {
  switch (account.purpose) {
    case 'receivable':
      return `owed ${account.invoice}`;
    case 'credit held':
      return `credit ${account.party} ${currency}`;
    case 'deposits held':
      return `deposit ${account.engagement}`;
    case 'bank':
    case 'cash':
      return `money ${currency}`;
    case 'income':
    case 'tax collected':
      return `earned ${currency}`;
    case 'exchange difference':
      return 'exchange difference';
    default:
      return `given up ${currency}`;
  }
}
