// All amounts of a tariff raised by a share: what a form asks for as money is raised, shares and times are not.

import { type Currency, divideRounded, fromDecimal, minorDigits, toDecimal, WHOLE } from '@colla/money';
import { KINDS, type Kind, type WrittenTariff } from '@colla/rates';
import { refused } from '@colla/refusal';
import { termsParameters } from './clause-parameters.ts';
import { leavesOf, pointerOf } from './leaves.ts';
import type { Parameter, Shape } from './parameter.ts';
import type { Reader } from './typed.ts';

export const ROUNDINGS = ['exact', 'half', 'whole'] as const;
export type Rounding = (typeof ROUNDINGS)[number];

export interface Raise {
  /** In basis points: 300 is 3 %. Below zero, it lowers. */
  readonly share: number;
  readonly round: Rounding;
}

/** One amount before and after, as decimal text, by its clause and what it is called in its sentence. */
export interface Raised {
  readonly pointer: string;
  readonly clause: string;
  readonly title: string;
  readonly was: string;
  readonly is: string;
}

/** The tariff with every amount that its clauses name raised, except steps that sums are rounded to. Nothing else changes. */
export function raiseRates(
  written: WrittenTariff,
  by: Raise,
  reader: Reader,
): { written: WrittenTariff; raised: Raised[] } {
  const raised: Raised[] = [];
  const clauses = written.clauses.map((clause, place) => {
    if (!KINDS.includes(clause.kind as Kind)) return clause;
    const parts = termsParameters(clause.kind as Kind, reader);
    const leaves = leavesOf(clause, clause.kind as Kind, reader);
    const titles = new Map(leaves.map(({ path, title }) => [pointerOf(path), title]));
    const terms = raiseParts(parts, clause.terms, '/terms', (was, at) => {
      const is = raiseAmount(was, by, reader.currency);
      const pointer = `/clauses/${place}${at}`;
      raised.push({ pointer, clause: clause.id, title: titles.get(at) ?? '', was, is });
      return is;
    });
    return { ...clause, terms };
  });
  return { written: { ...written, clauses }, raised };
}

/** The parameter that says to what sums are rounded: a step, and no price. */
const STEP = 'rounded';

/** `at` is a JSON pointer in the clause. */
type Raiser = (was: string, at: string) => string;
type Terms = Readonly<Record<string, unknown>>;

function raiseParts(parts: readonly Parameter[], values: Terms, at: string, raise: Raiser): Terms {
  const changed = parts
    .filter(({ name }) => values[name] !== undefined && name !== STEP)
    .map(({ name, shape }) => [name, raiseValue(shape, values[name], `${at}/${name}`, raise)]);
  return { ...values, ...Object.fromEntries(changed) };
}

function raiseValue(shape: Shape, value: unknown, at: string, raise: Raiser): unknown {
  switch (shape.is) {
    case 'amount':
      return typeof value === 'string' ? raise(value, at) : value;
    case 'group':
      return isTerms(value) ? raiseParts(shape.parts, value, at, raise) : value;
    case 'variant': {
      if (!isTerms(value)) return value;
      const chosen = shape.variants.find(({ word }) => word === value[shape.by]);
      return raiseParts(chosen?.parts ?? [], value, at, raise);
    }
    case 'list':
      return Array.isArray(value)
        ? value.map((item, place) => raiseValue(shape.of, item, `${at}/${place}`, raise))
        : value;
    default:
      return value;
  }
}

function isTerms(value: unknown): value is Terms {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

/** Rounded once. Below ten steps, rounding could move an amount by more than a twentieth: it is left alone. */
function raiseAmount(was: string, { share, round }: Raise, currency: Currency): string {
  const amount = fromDecimal(was, currency);
  if (refused(amount)) return was;
  const step = stepOf(round, currency);
  const to = amount < 10n * step ? 1n : step;
  return toDecimal(divideRounded(amount * BigInt(WHOLE + share), BigInt(WHOLE) * to) * to, currency);
}

/** In minor units. A currency without halves is rounded to whole units. */
function stepOf(round: Rounding, currency: Currency): bigint {
  const whole = 10n ** BigInt(minorDigits(currency));
  if (round === 'exact') return 1n;
  return round === 'half' && whole > 1n ? whole / 2n : whole;
}
