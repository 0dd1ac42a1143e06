// What is wrong with a field that cannot be read, and how to mend it: for whatever is sent, imported or typed.

/** What a schema finds wrong, in the form in which the schema library hands it to whoever has words for it. */
export interface Issue {
  readonly code?: string | undefined;
  readonly input?: unknown;
  readonly expected?: string | undefined;
  readonly values?: readonly unknown[] | undefined;
  readonly options?: readonly unknown[] | undefined;
  readonly discriminator?: string | undefined;
  readonly origin?: string | undefined;
  readonly minimum?: unknown;
  readonly maximum?: unknown;
  readonly format?: string | undefined;
}

/** A predicate that has the field, or its value, before it: “is missing; give a whole number”. */
export function misreadWords(issue: Issue): string {
  switch (issue.code) {
    case 'invalid_type':
      return issue.input === undefined ? `is missing; give ${typeOf(issue)}` : `is not ${typeOf(issue)}`;
    case 'invalid_value':
      return oneOf(issue.input, issue.values ?? []);
    case 'invalid_union':
      return issue.discriminator === undefined
        ? 'is of no known form'
        : oneOf(told(issue.input, issue.discriminator), issue.options ?? []);
    case 'too_small':
      return tooSmall(issue);
    case 'too_big':
      return tooBig(issue);
    case 'unrecognized_keys':
      return 'is not known here; remove it, or correct its name';
    case 'invalid_format':
      return issue.format === 'uuid'
        ? 'is not an id that these books have given'
        : 'is not written as it should be';
    default:
      return 'is not readable';
  }
}

function typeOf({ expected = '' }: Issue): string {
  return TYPES[expected] ?? expected;
}

const TYPES: Readonly<Record<string, string>> = {
  int: 'a whole number',
  number: 'a number',
  string: 'text in quotes',
  boolean: 'true or false',
  array: 'a list',
  object: 'an object',
  record: 'an object',
};

function oneOf(value: unknown, words: readonly unknown[]): string {
  const known = words.map(String).join(', ');
  return value === undefined ? `is missing; give one of ${known}` : `is none of ${known}`;
}

/** What tells the forms of an object apart. */
function told(input: unknown, by: string): unknown {
  return typeof input === 'object' && input !== null ? Reflect.get(input, by) : undefined;
}

function tooSmall({ minimum, origin = '' }: Issue): string {
  const many = MANY[origin];
  if (many === undefined) return `is below the least, which is ${minimum}`;
  return Number(minimum) === 1
    ? 'is empty; give one at least'
    : `is too short; give ${minimum} ${many} at least`;
}

function tooBig({ maximum, origin = '' }: Issue): string {
  const many = MANY[origin];
  return many === undefined
    ? `is above the most, which is ${maximum}`
    : `is too long; give ${maximum} ${many} at most`;
}

const MANY: Readonly<Record<string, string>> = { string: 'characters', array: 'items' };

/** The JSON pointer of what is wrong (RFC 6901); an unknown field is pointed at itself, not at what it stands in. */
export function pointerOf({
  path,
  keys = [],
}: {
  path: readonly PropertyKey[];
  keys?: readonly string[];
}): string {
  return [...path, ...keys.slice(0, 1)].map((key) => `/${pointerKey(key)}`).join('');
}

/** A key as a JSON pointer writes it. */
export function pointerKey(key: PropertyKey): string {
  return String(key).replaceAll('~', '~0').replaceAll('/', '~1');
}
