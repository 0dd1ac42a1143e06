// Tariffs as files: what is written out reads back, what is wrong is refused with its path, and a validator that knows
// nothing of us agrees by the published schema.

import { granted } from '@colla/refusal';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { exportTariff, importTariff, tariffJsonSchema } from './exchange.ts';
import { tariffOf } from './priced.ts';
import type { WrittenTariff } from './tariff.ts';

interface Policy {
  readonly tariffs: readonly WrittenTariff[];
}
const policies = Object.entries(
  import.meta.glob<Policy>('./policies/*.json', { eager: true, import: 'default' }),
);
// `unit` is a word of ours in the schema, for forms; validators leave it aside.
const valid = new Ajv2020({ strictSchema: true, strictTypes: false, keywords: ['unit'] }).compile(
  tariffJsonSchema(),
);

const tariff = tariffOf([{ id: 'hours', kind: 'hourly', terms: { price: '60.00' } }]);
const file = exportTariff(tariff);

it('a tariff written to a file and read again is the same tariff', () => {
  expect(granted(importTariff(JSON.parse(JSON.stringify(file)))).written).toEqual(tariff.written);
});

describe('by the published schema', () => {
  it.each(policies.map(([path, policy]) => [path.replace(/^.*\/|\.json$/g, ''), policy] as const))(
    'every tariff of %s is one',
    (_, { tariffs }) => {
      for (const written of tariffs) {
        valid({ format: 1, ...written });
        expect(valid.errors).toBeNull();
      }
    },
  );
});

describe('a file is refused, by us with its path and by the schema', () => {
  const clause = { id: 'hours', kind: 'hourly', terms: { price: '60.00' } };
  const cases: [string, unknown, string, string, string][] = [
    [
      'in a form from the future',
      { ...file, format: 2 },
      'rates/from-the-future',
      '/format',
      'The tariff is written in form 2, and this program reads up to 1. Update the program to read it.',
    ],
    [
      'in a form that is none',
      { ...file, format: 'new' },
      'rates/malformed-tariff',
      '/format',
      'The tariff at “/format”: "new" is not a form that tariffs are written in. Give 1.',
    ],
    [
      'with a field nobody knows',
      { ...file, colour: 'red' },
      'rates/malformed-tariff',
      '/colour',
      'The tariff at “/colour”: “colour” is not known here; remove it, or correct its name.',
    ],
    [
      'with a parameter nobody knows',
      { ...file, clauses: [{ ...clause, terms: { price: '60.00', tempo: 'presto' } }] },
      'rates/malformed-tariff',
      '/clauses/0/terms/tempo',
      'Clause “hours” at “/terms/tempo”: “tempo” is not known here; remove it, or correct its name.',
    ],
    [
      'with a condition nobody knows',
      { ...file, clauses: [{ ...clause, for: { weather: ['rain'] } }] },
      'rates/malformed-tariff',
      '/clauses/0/for/weather',
      'The tariff at “/clauses/0/for/weather”: “weather” is not known here; remove it, or correct its name.',
    ],
    [
      'with a range that ends below where it begins: only we say that',
      { ...file, clauses: [{ ...clause, for: { minutes: { from: 30, to: 20 } } }] },
      'rates/malformed-tariff',
      '/clauses/0/for/minutes',
      'The tariff at “/clauses/0/for/minutes”: ends below where it begins. Exchange its two ends.',
    ],
  ];

  it.each(cases)('%s', (name, input, code, field, sentence) => {
    expect(importTariff(input)).toMatchObject({ code, field, sentence });
    expect(valid(input)).toBe(name.endsWith('only we say that'));
  });
});
