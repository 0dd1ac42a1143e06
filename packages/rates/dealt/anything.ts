// Any tariff at all, dealt from what the schemas of the kinds allow: most contradict themselves, the rest can be priced.

import { currency } from '@colla/money';
import { granted } from '@colla/refusal';
import fc from 'fast-check';
import { z } from 'zod';
import { menu } from '../src/clauses/index.ts';
import { selectorSchema } from '../src/selector.ts';
import type { WrittenClause } from '../src/tariff.ts';

/** A JSON Schema, as far as the kinds use it. */
interface Node {
  readonly type?: string;
  readonly unit?: string;
  readonly const?: unknown;
  readonly enum?: readonly unknown[];
  readonly minimum?: number;
  readonly maximum?: number;
  readonly minItems?: number;
  readonly items?: Node;
  readonly properties?: Readonly<Record<string, Node>>;
  readonly required?: readonly string[];
  readonly oneOf?: readonly Node[];
}

/** The short names that clauses may have, so that they can name one another. */
const NAMES = ['a', 'b', 'c', 'd', 'e'];
const FIGURES = [0, 1, 2, 7, 15, 30, 45, 60, 90, 120, 2500, 5000, 10_000];

function dealt(node: Node): fc.Arbitrary<unknown> {
  if (node.oneOf) return fc.oneof(...node.oneOf.map(dealt));
  if (node.const !== undefined) return fc.constant(node.const);
  if (node.enum) return fc.constantFrom(...node.enum);
  switch (node.type) {
    case 'object':
      return dealtObject(node);
    case 'array':
      return dealtArray(node);
    case 'boolean':
      return fc.boolean();
    case 'integer':
    case 'number':
      return fc.constantFrom(...figuresOf(node));
    default:
      return dealtText(node);
  }
}

function figuresOf({ minimum = 0, maximum = 10_000 }: Node): number[] {
  const within = FIGURES.filter((figure) => figure >= minimum && figure <= maximum);
  return within.length > 0 ? within : [minimum];
}

/** What must be there, and one or two fields that may be. */
function dealtObject({ properties = {}, required = [] }: Node): fc.Arbitrary<unknown> {
  const fields = Object.fromEntries(Object.entries(properties).map(([name, node]) => [name, dealt(node)]));
  const optional = Object.keys(fields).filter((name) => !required.includes(name));
  return fc
    .subarray(optional, { maxLength: Math.min(2, optional.length) })
    .chain((also) =>
      fc.record(
        Object.fromEntries(
          Object.entries(fields).filter(([name]) => required.includes(name) || also.includes(name)),
        ),
      ),
    );
}

function dealtArray({ items = {}, minItems = 0, unit }: Node): fc.Arbitrary<unknown> {
  const some = unit === 'clause' ? fc.constantFrom(...NAMES) : dealt(items);
  return fc.uniqueArray(some, { minLength: minItems, maxLength: minItems + 1, selector: JSON.stringify });
}

function dealtText({ unit }: Node): fc.Arbitrary<unknown> {
  if (unit === 'money') return fc.constantFrom('0', '7', '12.50', '100', '333.33');
  if (unit === 'time') return fc.constantFrom('06:00', '18:00', '23:30');
  if (unit === 'date') return fc.constantFrom('03-01', '03-20', '12-24', '02-10');
  return fc.constantFrom('late', 'alone', 'mock', 'student', 'hard');
}

const EUROS = granted(currency('EUR'));
const schemas = Object.values(menu).map((kind) => ({
  kind: kind.kind,
  terms: dealt(z.toJSONSchema(kind.schema(EUROS), { io: 'input' }) as Node),
}));
const selector = dealt(z.toJSONSchema(selectorSchema, { io: 'input' }) as Node);

/** A clause of any kind; half of them are for everything, so that many of them meet. */
const anyClause: fc.Arbitrary<Omit<WrittenClause, 'id'>> = fc
  .constantFrom(...schemas)
  .chain(({ kind, terms }) =>
    fc.record({ kind: fc.constant(kind), terms, for: fc.oneof(fc.constant({}), selector) }),
  ) as fc.Arbitrary<Omit<WrittenClause, 'id'>>;

const HOURS: WrittenClause = { id: 'a', kind: 'hourly', terms: { price: '40.00' } };

/** Clauses with names of their own, that may name one another; the first prices whatever the others do not. */
export const anyClauses: fc.Arbitrary<WrittenClause[]> = fc
  .array(anyClause, { minLength: 1, maxLength: NAMES.length - 1 })
  .map((clauses) => [HOURS, ...clauses.map((clause, place) => ({ ...clause, id: NAMES[place + 1] ?? 'z' }))]);
