// A tariff: a versioned, dated list of clauses. Written as JSON, read once, trusted afterwards.

import { readDay, type Temporal } from '@colla/calendar';
import { type Currency, measure } from '@colla/money';
import { type OrRefusal, pointerKey, Refusal, refused } from '@colla/refusal';
import { z } from 'zod';
import { menu } from './clauses/index.ts';
import { contradiction } from './contradiction.ts';
import { kindOf } from './kinds.ts';
import { malformed, wordsFor } from './malformed.ts';
import { type Selector, selectorSchema } from './selector.ts';
import { voice as voiceOf } from './voice.ts';

type Menu = typeof menu;
export type Kind = keyof Menu;
export const KINDS = Object.keys(menu) as Kind[];

/** A clause of one kind, read. */
export interface ClauseOf<K extends Kind> {
  readonly id: string;
  readonly kind: K;
  readonly for: Selector;
  readonly payer: string;
  readonly terms: z.output<ReturnType<Menu[K]['schema']>>;
}
export type Clause = { [K in Kind]: ClauseOf<K> }[Kind];

/** A clause as it is written and stored: amounts are decimal text. */
export interface WrittenClause {
  readonly id: string;
  readonly kind: string;
  readonly for?: Selector | undefined;
  readonly payer?: string | undefined;
  readonly terms: Readonly<Record<string, unknown>>;
}

/**
 * A tariff as it is written and stored. `from` is the day on which this version begins. `currency` may be `load`: the
 * same clauses then count hours of load and not money.
 */
export interface WrittenTariff {
  readonly name: string;
  readonly currency: string;
  readonly version: number;
  readonly from: string;
  /** What a reader should know of how an open point was read. */
  readonly note?: string | undefined;
  readonly clauses: readonly WrittenClause[];
}

export interface Tariff {
  readonly name: string;
  readonly currency: Currency;
  readonly version: number;
  readonly from: Temporal.PlainDate;
  readonly clauses: readonly Clause[];
  /** As written, for the books: reading it again gives this tariff. */
  readonly written: WrittenTariff;
}

/** Who pays where the tariff names nobody. */
export const PAYER = 'payer';

export const writtenTariffSchema = z.strictObject({
  name: z.string().trim().min(1, 'is empty; give the tariff a name').max(120),
  currency: z.string(),
  version: z.int().min(1).max(100_000),
  from: z.string(),
  note: z.string().max(4000).optional(),
  clauses: z
    .array(
      z.strictObject({
        id: z
          .string()
          .regex(/^[a-z0-9][a-z0-9-]{0,59}$/, 'is not a short name; use small letters, digits and hyphens'),
        kind: z.string(),
        for: selectorSchema.optional(),
        payer: z.string().trim().min(1).max(60).optional(),
        terms: z.record(z.string(), z.unknown()),
      }),
    )
    .max(200),
});

/**
 * Reads a written tariff. Refuses what is not one, with the path of the first thing wrong: an unknown kind or
 * field, an amount with too many decimals, a figure out of range; and clauses that contradict one another.
 */
export function readTariff(input: unknown): OrRefusal<Tariff> {
  const shape = writtenTariffSchema.safeParse(input, { error: wordsFor });
  if (!shape.success) return malformed(shape.error, { pointer: '' });
  const money = measure(shape.data.currency);
  if (refused(money)) return money.at('/currency');
  const from = readDay(shape.data.from);
  if (refused(from)) return from.at('/from');
  const clauses: Clause[] = [];
  for (const [index, written] of shape.data.clauses.entries()) {
    const clause = readClause(written, money);
    if (refused(clause)) return clause.at(`/clauses/${index}`);
    clauses.push(clause);
  }
  const { name, version } = shape.data;
  return contradiction(clauses) ?? { name, currency: money, version, from, clauses, written: shape.data };
}

/** Reads one clause by itself; what it and others contradict, only `readTariff` can say. */
export function readClause(written: WrittenClause, money: Currency): OrRefusal<Clause> {
  const kind = menu[written.kind as Kind];
  if (!Object.hasOwn(menu, written.kind)) {
    const known = KINDS.join(', ');
    return new Refusal(
      'rates/unknown-kind',
      `“${written.kind}” is not a kind of clause. The kinds are ${known}.`,
      { kind: written.kind },
      '/kind',
    );
  }
  const terms = kind.schema(money).safeParse(written.terms, { error: wordsFor });
  if (!terms.success) return malformed(terms.error, { pointer: '/terms', clause: written.id });
  return {
    id: written.id,
    kind: kind.kind,
    for: written.for ?? {},
    payer: written.payer ?? PAYER,
    terms: terms.data,
  } as Clause;
}

/** The sentence a client reads for a clause. */
export function sentenceOf(clause: Clause, of: { locale: string; currency: Currency }): string {
  const voice = voiceOf(of.locale, of.currency);
  return kindOf(clause).sentence(clause.terms, { voice, for: clause.for, payer: clause.payer });
}

/** The sentences of a tariff, clause by clause. */
export function sentencesOf(tariff: Tariff, locale: string): { clause: string; sentence: string }[] {
  return tariff.clauses.map((clause) => ({
    clause: clause.id,
    sentence: sentenceOf(clause, { locale, currency: tariff.currency }),
  }));
}

/**
 * The tariff with prices chosen one by one within their bands, as an agreement may. Keys are clause ids, values
 * decimal text. Refuses a clause that is not there or has no band, and a price outside it.
 */
export function withChoices(tariff: Tariff, choices: Readonly<Record<string, string>>): OrRefusal<Tariff> {
  if (Object.keys(choices).length === 0) return tariff;
  for (const id of Object.keys(choices)) {
    const clause = tariff.written.clauses.find((clause) => clause.id === id);
    if (!clause || !Object.hasOwn(clause.terms, 'band')) {
      return new Refusal(
        'rates/no-choice',
        `Clause “${id}” leaves no price to choose. Remove the choice, or give the clause a band.`,
        { clause: id },
        `/choices/${pointerKey(id)}`,
      );
    }
  }
  const clauses = tariff.written.clauses.map((clause) => {
    const price = Object.hasOwn(choices, clause.id) ? choices[clause.id] : undefined;
    const parameter = menu[clause.kind as Kind].choice;
    return price === undefined || parameter === undefined
      ? clause
      : { ...clause, terms: { ...clause.terms, [parameter]: price } };
  });
  const chosen = readTariff({ ...tariff.written, clauses });
  return refused(chosen) ? ofItsChoice(chosen, clauses, choices) : chosen;
}

/** A refusal of a clause whose price was chosen points at the choice: the clause itself was not sent. */
function ofItsChoice(
  refusal: Refusal,
  clauses: readonly WrittenClause[],
  choices: Readonly<Record<string, string>>,
): Refusal {
  const [, index] = /^\/clauses\/(\d+)\//.exec(refusal.field ?? '') ?? [];
  const id = clauses[Number(index)]?.id;
  if (id === undefined || !Object.hasOwn(choices, id)) return refusal;
  return new Refusal(refusal.code, refusal.sentence, refusal.facts, `/choices/${pointerKey(id)}`);
}
