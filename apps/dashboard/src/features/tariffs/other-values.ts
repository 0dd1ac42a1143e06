// Other values that a parameter could have, to find where a sentence says it.

import { type Currency, toDecimal } from '@colla/money';
import type { LeafShape } from './leaves.ts';
import type { Parameter, Shape } from './parameter.ts';

/** Values unlike any other figure or word of a clause, and unlike one another in how they are said. */
export function otherValues(shape: LeafShape, currency: Currency): readonly unknown[] {
  switch (shape.is) {
    case 'amount':
      return AMOUNTS.map((amount) => toDecimal(amount, currency));
    case 'figure':
      return FIGURES[shape.unit].filter((figure) => figure >= shape.least && figure <= shape.most);
    case 'words':
      return WORDS;
    case 'time':
      return ['03:17', '22:41'];
    case 'choice':
      return shape.words;
    case 'several':
      return shape.words.slice(0, 3).map((word) => [word]);
    case 'clauses':
    case 'own words':
      return [...WORDS.map((word) => [word]), WORDS];
    case 'variant':
      return shape.variants.map(({ word }) => word);
    case 'yes or no':
      return [];
  }
}

const AMOUNTS = [98_765n, 4_321n];
const WORDS = ['zyx', 'quince'];
const FIGURES = {
  minutes: [37, 30, 60, 150, 41],
  share: [3700, 8650],
  rate: [3700, 8650],
  count: [37, 41, 3, 7, 2],
  days: [37, 41, -37, -41],
};

/** The parameters of a variant as they might be written, for its sentence to be said. */
export function sampleOf(parts: readonly Parameter[], currency: Currency): Record<string, unknown> {
  return Object.fromEntries(
    parts.filter(({ optional }) => !optional).map(({ name, shape }) => [name, sample(shape, currency)]),
  );
}

function sample(shape: Shape, currency: Currency): unknown {
  switch (shape.is) {
    case 'group':
      return sampleOf(shape.parts, currency);
    case 'list':
      return Array.from({ length: Math.max(1, shape.least) }, () => sample(shape.of, currency));
    case 'variant': {
      const [first] = shape.variants;
      return first && { [shape.by]: first.word, ...sampleOf(first.parts, currency) };
    }
    case 'yes or no':
      return shape.usual;
    default:
      return ('usual' in shape ? shape.usual : undefined) ?? otherValues(shape, currency)[0];
  }
}
