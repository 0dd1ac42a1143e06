// The refusal of what cannot be read as a tariff: the first thing wrong, its path, and one sentence that mends it.

import { type Issue, misreadWords, pointerOf, Refusal } from '@colla/refusal';
import type { z } from 'zod';

/** What is said of a parameter where its own field has no words, with the value that was given before it. */
export function wordsFor(issue: Issue & { readonly keys?: readonly string[] | undefined }): string {
  const { code, input, discriminator, keys } = issue;
  if (code === 'unrecognized_keys') return `“${keys?.[0]}” ${misreadWords(issue)}`;
  const value = discriminator === undefined ? input : Object(input)[discriminator];
  return value === undefined ? misreadWords(issue) : `${show(value)} ${misreadWords(issue)}`;
}

function show(value: unknown): string {
  return typeof value === 'string' ? `“${value}”` : (JSON.stringify(value) ?? 'this').slice(0, 60);
}

/** Where the thing wrong stands: under which pointer it was read, and in which clause. */
interface Place {
  readonly pointer: string;
  readonly clause?: string;
}

/** The first issue of an input as a refusal whose field is its JSON pointer. */
export function malformed({ issues: [issue] }: z.ZodError, { pointer, clause }: Place): Refusal {
  const field = pointer + (issue ? pointerOf(issue) : '');
  const where = clause === undefined ? 'The tariff' : `Clause “${clause}”`;
  const said = issue?.message ?? 'cannot be read';
  return new Refusal(
    'rates/malformed-tariff',
    `${where} at “${field || '/'}”: ${said}`.replace(/([^.])$/, '$1.'),
    {},
    field,
  );
}
