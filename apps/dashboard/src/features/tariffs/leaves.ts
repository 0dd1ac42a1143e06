// The single figures and words that a clause is made of, each by where it stands in it.

import type { Kind, WrittenClause } from '@colla/rates';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { selectorParameters, termsParameters } from './clause-parameters.ts';
import type { Parameter, Shape } from './parameter.ts';
import type { Reader } from './typed.ts';

/** Where something stands in a clause: `terms`, `scale`, 0, `before`. */
export type Path = readonly (string | number)[];

/** What is chosen or typed at once: all but lists and groups, of which it is a part. */
export type LeafShape = Exclude<Shape, { is: 'list' | 'group' }>;

export interface Leaf {
  readonly path: Path;
  /** Its name, with the name of what it is part of and, in a list, its place. */
  readonly title: string;
  readonly shape: LeafShape;
  /** As written; of variants, the word of the one chosen. Undefined where nothing is written. */
  readonly value: unknown;
}

/** Who pays: some sentences name them. */
const payer = (value: unknown): Leaf => ({
  path: ['payer'],
  title: say('payerField'),
  shape: { is: 'words' },
  value,
});

/** Every leaf of a clause as written, in the order in which its fields are asked for. */
export function leavesOf(clause: WrittenClause, kind: Kind, reader: Reader): Leaf[] {
  return [
    ...leavesIn(selectorParameters, clause.for ?? {}, { path: ['for'], of: '', place: '' }),
    ...leavesIn(termsParameters(kind, reader), clause.terms, { path: ['terms'], of: '', place: '' }),
    payer(clause.payer),
  ];
}

interface Inside {
  readonly path: Path;
  readonly of: string;
  readonly place: string;
}

type Values = Readonly<Record<string, unknown>>;

function leavesIn(parts: readonly Parameter[], values: Values, inside: Inside): Leaf[] {
  return parts.flatMap(({ name, title, shape }) =>
    leavesAt(shape, values[name], title, { ...inside, path: [...inside.path, name] }),
  );
}

function leavesAt(shape: Shape, value: unknown, title: string, inside: Inside): Leaf[] {
  const { path, of, place } = inside;
  const named = `${of ? `${of}, ` : ''}${title}${place}`;
  switch (shape.is) {
    case 'group':
      return isValues(value) ? leavesIn(shape.parts, value, { ...inside, of: title }) : [];
    case 'variant': {
      if (!isValues(value)) return [];
      const chosen = shape.variants.find(({ word }) => word === value[shape.by]);
      const own: Leaf = { path, title: named, shape, value: value[shape.by] };
      return [own, ...leavesIn(chosen?.parts ?? [], value, { ...inside, of: title })];
    }
    case 'list':
      return itemsOf(value).flatMap((item, index) => leavesOfItem(shape.of, item, title, inside, index));
    default:
      return [{ path, title: named, shape, value }];
  }
}

/** An item is known by its place; its list need not be named again. */
function leavesOfItem(shape: Shape, item: unknown, title: string, inside: Inside, index: number): Leaf[] {
  const at = { of: '', path: [...inside.path, index], place: `${inside.place} (${index + 1})` };
  return shape.is === 'group' && isValues(item)
    ? leavesIn(shape.parts, item, at)
    : leavesAt(shape, item, title, at);
}

function itemsOf(value: unknown): readonly unknown[] {
  return Array.isArray(value) ? value : [];
}

/** The clause with something else written at a place. */
export function withAt<Whole>(whole: Whole, [first, ...rest]: Path, value: unknown): Whole {
  if (first === undefined) return value as Whole;
  if (Array.isArray(whole)) {
    return whole.map((item, index) => (index === first ? withAt(item, rest, value) : item)) as Whole;
  }
  const values: Values = isValues(whole) ? whole : {};
  return { ...values, [first]: withAt(values[String(first)], rest, value) } as Whole;
}

/** What is written at a place. */
export function valueAt(whole: unknown, path: Path): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      Array.isArray(value) ? value[Number(key)] : isValues(value) ? value[String(key)] : undefined,
    whole,
  );
}

/** A place in a clause as a JSON pointer. */
export function pointerOf(path: Path): string {
  return path.map((key) => `/${key}`).join('');
}

function isValues(value: unknown): value is Values {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}
