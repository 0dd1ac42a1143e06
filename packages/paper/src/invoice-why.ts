// How the amounts of an invoice came about: clause by clause, the sentence as agreed, and below it each line's facts and
// arithmetic. Lines worked out alike are said together.

import type { InvoiceLine } from '@colla/invoicing';
import { saysMore } from './invoice-table.ts';
import type { Manuscript, Reasons } from './manuscript.ts';
import { type InvoiceReader, type Reading, sayDay } from './reading.ts';

type Sentences = NonNullable<InvoiceReader['sentences']>;

/** One thing that was worked out: what it is, when it was, and how. */
interface Worked {
  readonly clause: string;
  readonly what: string;
  readonly day: string;
  readonly how: string;
}

/** Nothing where nothing is to be said beyond the table. */
export function invoiceWhy(reading: Reading, sentences: Sentences): Pick<Manuscript, 'why'> {
  const { lines, taxes } = reading.invoice;
  const all = [
    ...lines.map((line) => workedOf(line, reading)),
    ...taxes.map(({ clause = '', name, arithmetic = '' }) => ({
      clause,
      what: name,
      day: '',
      how: arithmetic,
    })),
  ];
  const of = grouped(all, ({ clause }) => clause)
    .map(([clause, worked]) => reasonOf(clause, worked, sentences))
    .filter(({ sentence, worked }) => sentence !== undefined || worked.length > 0);
  return of.length > 0 ? { why: { label: reading.words.why, of } } : {};
}

/** Arithmetic stands here where the table does not say it under the line. */
function workedOf({ clause, what, on, facts, arithmetic }: InvoiceLine, reading: Reading): Worked {
  const from = facts.map(({ name, value }) => (name === 'why' ? value : `${name} ${value}`));
  const sum = saysMore(arithmetic) ? '' : arithmetic;
  const how = [reading.words.whyFrom(from), sum].filter(Boolean).join('; ');
  return { clause, what, day: on ? sayDay(reading, on, 'short') : '', how };
}

function reasonOf(clause: string, all: readonly Worked[], sentences: Sentences): Reasons['of'][number] {
  const sentence = sentences.find((said) => said.clause === clause)?.sentence;
  const said = all.filter(({ how }) => how !== '');
  const worked = grouped(said, ({ how }) => how).map(([how, alike]) => `${sayAlike(alike)}: ${how}`);
  return sentence === undefined ? { worked } : { sentence, worked };
}

/** “Rehearsal, 3 Mar 2026, 10 Mar 2026; Jury, 14 Mar 2026 (× 6)”. */
function sayAlike(alike: readonly Worked[]): string {
  const named = grouped(alike, ({ what }) => what);
  return named
    .map(([what, of]) => [what, ...grouped(of, ({ day }) => day).flatMap(sayDays)].join(', '))
    .join('; ');
}

function sayDays([day, of]: readonly [string, readonly Worked[]]): string[] {
  if (day === '') return [];
  return [of.length > 1 ? `${day} (× ${of.length})` : day];
}

/** What has the same key, together, in the order in which each key first comes. */
function grouped(all: readonly Worked[], by: (one: Worked) => string): [string, Worked[]][] {
  const groups = new Map<string, Worked[]>();
  for (const one of all) groups.set(by(one), [...(groups.get(by(one)) ?? []), one]);
  return [...groups];
}
