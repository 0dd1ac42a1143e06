// Reads what was sent by a schema, and says of every field that is wrong what is wrong with it and how to mend it.

import { misreadWords, pointerOf } from '@colla/refusal';
import type { z } from 'zod';

/** One wrong field: its JSON pointer, and a sentence. */
export interface Misread {
  readonly pointer: string;
  readonly detail: string;
}

/** What was sent, read; or every field that is wrong. */
export function readBy<Schema extends z.ZodType>(
  schema: Schema,
  sent: unknown,
): { value: z.output<Schema> } | { misread: Misread[] } {
  const read = schema.safeParse(sent, { error: misreadWords });
  if (read.success) return { value: read.data };
  return { misread: read.error.issues.map(sentenceOf) };
}

function sentenceOf(issue: z.core.$ZodIssue): Misread {
  const path = issue.code === 'unrecognized_keys' ? [...issue.path, issue.keys[0] ?? ''] : issue.path;
  return { pointer: pointerOf({ path }), detail: `${subjectOf(path)} ${issue.message}.` };
}

/** The field by its name; an item of a list by its place, counted from one. */
function subjectOf(path: readonly PropertyKey[]): string {
  const last = path.at(-1);
  if (last === undefined) return 'What was sent';
  if (typeof last !== 'number') return `“${String(last)}”`;
  const list = path.findLast((key) => typeof key !== 'number');
  return list === undefined ? `Item ${last + 1}` : `Item ${last + 1} of “${String(list)}”`;
}
