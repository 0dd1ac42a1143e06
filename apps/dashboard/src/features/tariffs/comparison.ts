// Two tariffs on the same engagement: what each of their clauses charges, set side by side.

import {
  type Clause,
  type Line,
  menu,
  type Statement,
  sentenceOf,
  type Tariff,
  type TaxSum,
} from '@colla/rates';
import type { Example } from './example.ts';
import { priceExample } from './example-priced.ts';

/** What one clause charges for the engagement, in minor units, and the sentence by which it does. */
export interface Charged {
  readonly clause: string;
  /** What its kind is called. */
  readonly title: string;
  readonly sentence: string;
  readonly amount: bigint;
  /** What the amount is put together from: lines, and tax that is added. */
  readonly parts: readonly (Line | TaxSum)[];
}

/** A clause of each; one is missing where the other tariff has nothing that answers to it. */
export interface ComparedRow {
  readonly key: string;
  readonly one?: Charged;
  readonly other?: Charged;
}

export interface Comparison {
  /** What charges something under either. */
  readonly rows: readonly ComparedRow[];
  /** What charges nothing here, but says what would be owed, or when: cancellation, deposit, payment. */
  readonly silent: readonly ComparedRow[];
  readonly one: Statement | undefined;
  readonly other: Statement | undefined;
}

interface Said {
  readonly locale: string;
  readonly zone: string;
}

/** Clause beside clause: those of one name stand together, then those of one kind. */
export function compareOn(example: Example, one: Tariff, other: Tariff, said: Said): Comparison {
  const [first, second] = [one, other].map(
    (tariff) => priceExample(example, tariff, { ...said, currency: tariff.currency }).statement,
  );
  const rows = pairsOf(one.clauses, other.clauses).map(([a, b]) => ({
    key: `${a?.id ?? ''} ${b?.id ?? ''}`,
    ...(a && first ? { one: chargedBy(a, first, said.locale) } : {}),
    ...(b && second ? { other: chargedBy(b, second, said.locale) } : {}),
  }));
  const charges = ({ one, other }: ComparedRow) => one?.amount || other?.amount;
  return {
    rows: rows.filter(charges),
    silent: rows.filter((row) => !charges(row)),
    one: first,
    other: second,
  };
}

type Pair = readonly [Clause | undefined, Clause | undefined];

function pairsOf(one: readonly Clause[], other: readonly Clause[]): Pair[] {
  const left = new Set(other);
  const take = (found: Clause | undefined) => {
    if (found) left.delete(found);
    return found;
  };
  const named = new Map(one.map((clause) => [clause, take(other.find(({ id }) => id === clause.id))]));
  const pairs = one.map((clause): Pair => {
    const answers = named.get(clause) ?? take([...left].find(({ kind }) => kind === clause.kind));
    return [clause, answers];
  });
  return [...pairs, ...[...left].map((clause): Pair => [undefined, clause])];
}

/** Its lines together; tax that is inside the prices is in them already. */
function chargedBy(clause: Clause, { lines, taxes, currency }: Statement, locale: string): Charged {
  const theirs = [...lines, ...taxes.filter(({ inside }) => !inside)].filter((of) => of.clause === clause.id);
  return {
    clause: clause.id,
    title: menu[clause.kind].title,
    sentence: sentenceOf(clause, { locale, currency }),
    amount: theirs.reduce((sum, { amount }) => sum + amount, 0n),
    parts: theirs,
  };
}
