// What is said of a field that cannot be read: what is wrong, and how to mend it.

import { expect, it } from 'vitest';
import { type Issue, misreadWords, pointerOf } from './misread.ts';

it.each<[string, Issue]>([
  ['is missing; give a whole number', { code: 'invalid_type', expected: 'int' }],
  ['is not a list', { code: 'invalid_type', expected: 'array', input: 7 }],
  ['is none of up, down', { code: 'invalid_value', values: ['up', 'down'], input: 'sideways' }],
  ['is missing; give one of up, down', { code: 'invalid_value', values: ['up', 'down'] }],
  [
    'is none of amount, share',
    { code: 'invalid_union', discriminator: 'as', options: ['amount', 'share'], input: { as: 'favour' } },
  ],
  ['is of no known form', { code: 'invalid_union', input: 7 }],
  ['is below the least, which is 1', { code: 'too_small', origin: 'number', minimum: 1 }],
  ['is empty; give one at least', { code: 'too_small', origin: 'array', minimum: 1 }],
  ['is too short; give 8 characters at least', { code: 'too_small', origin: 'string', minimum: 8 }],
  ['is above the most, which is 10000', { code: 'too_big', origin: 'number', maximum: 10_000 }],
  ['is too long; give 8 items at most', { code: 'too_big', origin: 'array', maximum: 8 }],
  ['is not known here; remove it, or correct its name', { code: 'unrecognized_keys' }],
  ['is not an id that these books have given', { code: 'invalid_format', format: 'uuid' }],
  ['is not written as it should be', { code: 'invalid_format', format: 'date' }],
  ['is not readable', { code: 'custom' }],
])('it %s', (said, issue) => {
  expect(misreadWords(issue)).toBe(said);
});

it.each<[string, readonly PropertyKey[], readonly string[]]>([
  ['', [], []],
  ['/clauses/0/terms', ['clauses', 0, 'terms'], []],
  ['/terms/a~1b~0c', ['terms'], ['a/b~c', 'other']],
])('and points at it: %s', (pointer, path, keys) => {
  expect(pointerOf({ path, keys })).toBe(pointer);
});
