// The refusal of what cannot be read as a tariff: the first thing wrong, its path, and one sentence that mends it.

import { Refusal } from '@colla/refusal';
import type { z } from 'zod';

/** Where the thing wrong stands: under which pointer it was read, and in which clause. */
interface Place {
  readonly pointer: string;
  readonly clause?: string;
}

/** The first issue of an input as a refusal whose field is its JSON pointer. */
export function malformed(error: z.ZodError, input: unknown, { pointer, clause }: Place): Refusal {
  const issue = error.issues[0];
  const field = `${pointer}${(issue ? pathOf(issue) : []).map((key) => `/${pointerKey(key)}`).join('')}`;
  const said = issue ? say(issue, input) : 'cannot be read';
  const where = clause === undefined ? 'The tariff' : `Clause “${clause}”`;
  return new Refusal(
    'rates/malformed-tariff',
    `${where} at “${field || '/'}”: ${said}`.replace(/([^.])$/, '$1.'),
    {},
    field,
  );
}

/** A key as a JSON pointer writes it (RFC 6901). */
export function pointerKey(key: PropertyKey): string {
  return String(key).replaceAll('~', '~0').replaceAll('/', '~1');
}

type Issue = z.core.$ZodIssue;

/** An unknown field is pointed at itself, not at what it stands in. */
function pathOf(issue: Issue): readonly PropertyKey[] {
  return issue.code === 'unrecognized_keys' ? [...issue.path, ...issue.keys.slice(0, 1)] : issue.path;
}

function say(issue: Issue, input: unknown): string {
  if (!OF_THE_LIBRARY.test(issue.message)) return issue.message;
  const value = valueAt(input, issue.path);
  switch (issue.code) {
    case 'unrecognized_keys':
      return `“${issue.keys[0]}” is not known here. Remove it, or correct its name`;
    case 'invalid_type':
      return value === undefined
        ? `is missing. Give ${EXPECTED[issue.expected] ?? issue.expected}`
        : `${show(value)} is not ${EXPECTED[issue.expected] ?? issue.expected}`;
    case 'invalid_value':
      return `${show(value)} is not one of ${issue.values.map(String).join(', ')}`;
    case 'invalid_union':
      return 'options' in issue && Array.isArray(issue.options)
        ? `${show(value)} is not one of ${issue.options.map(String).join(', ')}`
        : issue.message;
    case 'too_small':
      return issue.origin === 'number' || issue.origin === 'int'
        ? `${show(value)} is below the least, which is ${issue.minimum}`
        : 'is empty. Give one at least';
    case 'too_big':
      return issue.origin === 'number' || issue.origin === 'int'
        ? `${show(value)} is above the most, which is ${issue.maximum}`
        : `is too long. It can have ${issue.maximum} ${issue.origin === 'string' ? 'letters' : 'entries'} at most`;
    default:
      return issue.message;
  }
}

/** How the schema library begins what it says itself; a field that says something of its own is let speak. */
const OF_THE_LIBRARY = /^(Invalid|Too|Unrecognized)/;

const EXPECTED: Readonly<Record<string, string>> = {
  string: 'text',
  number: 'a number',
  int: 'a whole number',
  boolean: 'true or false',
  array: 'a list',
  object: 'a group of fields',
  record: 'a group of fields',
};

function show(value: unknown): string {
  if (value === undefined) return 'nothing';
  return typeof value === 'string' ? `“${value}”` : (JSON.stringify(value) ?? 'this').slice(0, 60);
}

function valueAt(input: unknown, path: readonly PropertyKey[]): unknown {
  return path.reduce<unknown>(
    (value, key) =>
      typeof value === 'object' && value !== null ? (value as Record<PropertyKey, unknown>)[key] : undefined,
    input,
  );
}
