// Reads what was sent by a schema, and says of every field that is wrong what is wrong with it and how to mend it.

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
  const read = schema.safeParse(sent, { error: predicate });
  if (read.success) return { value: read.data };
  return { misread: read.error.issues.map(sentenceOf) };
}

function sentenceOf(issue: z.core.$ZodIssue): Misread {
  const path = issue.code === 'unrecognized_keys' ? [...issue.path, issue.keys[0] ?? ''] : issue.path;
  const pointer = path.map((key) => `/${escaped(String(key))}`).join('');
  return { pointer, detail: `${subjectOf(path)} ${issue.message}.` };
}

/** Escapes a key as a JSON pointer does (RFC 6901). */
function escaped(key: string): string {
  return key.replaceAll('~', '~0').replaceAll('/', '~1');
}

/** The field by its name; an item of a list by its place, counted from one. */
function subjectOf(path: readonly PropertyKey[]): string {
  const last = path.at(-1);
  if (last === undefined) return 'What was sent';
  if (typeof last !== 'number') return `“${String(last)}”`;
  const list = path.findLast((key) => typeof key !== 'number');
  return list === undefined ? `Item ${last + 1}` : `Item ${last + 1} of “${String(list)}”`;
}

/** What is said of a field where its schema has no words of its own. */
function predicate(issue: z.core.$ZodRawIssue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.input === undefined
        ? 'is missing'
        : `is not ${KINDS_OF_VALUE[issue.expected] ?? issue.expected}`;
    case 'invalid_value':
      return `is none of ${issue.values.map(String).join(', ')}`;
    case 'invalid_union':
      return issue.discriminator === undefined ? 'is of no known form' : 'is of no known kind';
    case 'too_small':
      return `is below its least, ${issue.minimum}${of(issue.origin)}`;
    case 'too_big':
      return `is beyond its most, ${issue.maximum}${of(issue.origin)}`;
    case 'unrecognized_keys':
      return 'is not known here; remove it';
    case 'invalid_format':
      return issue.format === 'uuid'
        ? 'is not an id that these books have given'
        : 'is not written as it should be';
    default:
      return 'is not readable';
  }
}

const KINDS_OF_VALUE: Readonly<Record<string, string>> = {
  int: 'a whole number',
  number: 'a number',
  string: 'text in quotes',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
  record: 'an object',
};

function of(origin: string): string {
  return { string: ' characters', array: ' items' }[origin] ?? '';
}
