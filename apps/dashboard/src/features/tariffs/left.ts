// What is left to ask of a clause whose sentence has fields for the rest.

import type { Parameter, Shape } from './parameter.ts';
import { type Fields, fieldsOf, type Typed } from './typed.ts';

/** The parameters of which something is not in the sentence, or that can be added to or left out. */
export function leftOf(
  parts: readonly Parameter[],
  fields: Fields,
  at: string,
  said: ReadonlySet<string>,
): readonly Parameter[] {
  return parts.filter(({ name, shape, optional }) => {
    const held = shape.is === 'group' || shape.is === 'variant';
    return (optional && held) || !isSaid(shape, fields[name], `${at}/${name}`, said);
  });
}

function isSaid(shape: Shape, typed: Typed, at: string, said: ReadonlySet<string>): boolean {
  switch (shape.is) {
    case 'list':
      return false;
    case 'group':
      return leftOf(shape.parts, fieldsOf(typed), at, said).length === 0;
    case 'variant': {
      const word = fieldsOf(typed)[shape.by];
      const parts = shape.variants.find((variant) => variant.word === word)?.parts ?? [];
      return said.has(at) && leftOf(parts, fieldsOf(typed), at, said).length === 0;
    }
    default:
      return said.has(at);
  }
}
