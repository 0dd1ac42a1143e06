// With what a part of a clause begins where it is added: as far as the clause says the like already, with that. What
// is added then changes nothing until it is changed.

import type { Parameter, Shape } from './parameter.ts';
import { freshOf } from './shown.ts';
import { type Fields, fieldsOf, type Reader, type Typed } from './typed.ts';

/** One of several begins as the one that is asked for beside it: without any word, what the last step owes. */
export function beginBeside(
  shape: Shape,
  parts: readonly Parameter[],
  fields: Fields,
  reader: Reader,
): Typed {
  const like = parts.find(
    (part) =>
      shape.is === 'variant' && !part.optional && JSON.stringify(part.shape) === JSON.stringify(shape),
  );
  return (like && fields[like.name]) ?? freshOf(shape, reader);
}

/** A first step begins at the price that holds before it. */
export function beginWithin(shape: Shape, fields: Fields, reader: Reader): Typed {
  const fresh = freshOf(shape, reader);
  if (shape.is !== 'group') return fresh;
  const amounts = shape.parts.filter(
    ({ shape, name }) => shape.is === 'amount' && fields[name] !== undefined,
  );
  return { ...fieldsOf(fresh), ...Object.fromEntries(amounts.map(({ name }) => [name, fields[name]])) };
}

/** An example without the words it chose for calls of its own, where they may be left out. */
export function withoutChosen(parts: readonly Parameter[], fields: Fields): Fields {
  const chosen = parts.filter(({ optional, shape }) => optional && shape.is === 'several');
  return { ...fields, ...Object.fromEntries(chosen.map(({ name }) => [name, []])) };
}
