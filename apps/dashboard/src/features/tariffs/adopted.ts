// A worked example taken into a tariff: where it speaks of other clauses, it speaks of those that are there.

import type { Parameter, Shape } from './parameter.ts';
import { type Fields, fieldsOf, itemsOf, type Typed } from './typed.ts';

/** Names that the tariff does not have give way to names that it has, each once. */
export function adopted(parts: readonly Parameter[], fields: Fields, names: readonly string[]): Fields {
  const free = names.filter((name) => !JSON.stringify(fields).includes(JSON.stringify(name)));
  return adoptedIn(parts, fields, { names, free });
}

interface There {
  readonly names: readonly string[];
  /** Those that the clause does not speak of yet; used up as they are taken. */
  readonly free: string[];
}

function adoptedIn(parts: readonly Parameter[], fields: Fields, there: There): Fields {
  const values = parts.map(({ name, shape }) => [name, adoptedAt(shape, fields[name], there)]);
  return { ...fields, ...Object.fromEntries(values) };
}

function adoptedAt(shape: Shape, typed: Typed, there: There): Typed {
  switch (shape.is) {
    case 'clauses':
      return adoptedNames(itemsOf(typed).map(String), there);
    case 'list':
      return itemsOf(typed).map((item) => adoptedAt(shape.of, item, there));
    case 'group':
      return typed === undefined ? typed : adoptedIn(shape.parts, fieldsOf(typed), there);
    case 'variant': {
      const chosen = shape.variants.find(({ word }) => word === fieldsOf(typed)[shape.by]);
      return chosen ? adoptedIn(chosen.parts, fieldsOf(typed), there) : typed;
    }
    default:
      return typed;
  }
}

/** Without any clause to speak of, the example keeps its own words: what it is for can then be read. */
function adoptedNames(said: readonly string[], { names, free }: There): Typed {
  return said.map((name) => (names.includes(name) ? name : (free.shift() ?? name)));
}
