// The parameters by which clauses are written, read once from what their kinds declare.

import { type Kind, menu, selectorSchema } from '@colla/rates';
import { type Parameter, parametersOf, type SchemaNode } from './parameter.ts';
import type { Reader } from './typed.ts';

/** Which calls a clause is for. */
export const selectorParameters: readonly Parameter[] = parametersOf(
  selectorSchema.toJSONSchema({ io: 'input' }) as SchemaNode,
);

const known = new Map<string, readonly Parameter[]>();

/** The parameters of a kind of clause in the reader's currency. */
export function termsParameters(kind: Kind, { currency }: Reader): readonly Parameter[] {
  const key = `${kind} ${currency}`;
  const parts =
    known.get(key) ?? parametersOf(menu[kind].schema(currency).toJSONSchema({ io: 'input' }) as SchemaNode);
  known.set(key, parts);
  return parts;
}

/** Whether parameters say which calls are meant, as a clause itself does: what a package includes. */
export function areSelector(parts: readonly Parameter[]): boolean {
  const named = parts.map(({ name }) => name).join();
  return named === selectorParameters.map(({ name }) => name).join();
}
