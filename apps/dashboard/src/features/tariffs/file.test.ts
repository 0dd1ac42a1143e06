// A tariff goes out as a file and comes back the same; what is no tariff is refused in one sentence.

import { readTariff, type WrittenTariff } from '@colla/rates';
import { granted, refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { fileName, readFile, writeFile } from './file.ts';

const written: WrittenTariff = {
  name: 'Pupils 2026/27',
  currency: 'GBP',
  version: 2,
  from: '2026-09-01',
  note: 'A started quarter hour counts.',
  clauses: [
    { id: 'lesson', kind: 'hourly', for: { calls: ['lesson'] }, payer: 'family', terms: { price: '40.00' } },
    { id: 'exam', kind: 'fixed', for: { calls: ['exam'] }, terms: { price: '60.00' } },
  ],
};

const text = writeFile(granted(readTariff(written)));

function withChange(change: (tariff: Record<string, unknown>) => void): string {
  const tariff = JSON.parse(text);
  change(tariff);
  return JSON.stringify(tariff);
}

it('a tariff saved as a file is read back as it was', () => {
  expect(granted(readFile(text))).toEqual(written);
});

it('a tariff that does not say its form is read', () => {
  expect(granted(readFile(JSON.stringify(written)))).toEqual(written);
});

it('the file is named by the tariff and its version', () => {
  expect(fileName(written)).toBe('pupils-2026-27-2.json');
});

describe('a file is refused where', () => {
  it.each([
    ['it is empty', ' ', undefined, /no text yet/],
    ['a bracket is missing', '{"name": "Pupils"', undefined, /not JSON/],
    ['it is a list', '[]', undefined, /not a tariff/],
    [
      'its form is newer',
      withChange((of) => {
        of.format = 2;
      }),
      '/format',
      /form 2, and this program reads up to 1/,
    ],
    [
      'its form is a word',
      withChange((of) => {
        of.format = 'new';
      }),
      '/format',
      /not a form that tariffs are written in/,
    ],
    [
      'it has a field nobody knows',
      withChange((of) => {
        of.colour = 'red';
      }),
      '/colour',
      /“colour” is not known here/,
    ],
    [
      'its currency is missing',
      withChange((of) => {
        delete of.currency;
      }),
      '/currency',
      /currency/,
    ],
    [
      'a clause has a field nobody knows',
      withChange((of) => {
        of.clauses = [{ ...written.clauses[1], terms: { price: '60.00', tip: '1.00' } }];
      }),
      '/clauses/0/terms/tip',
      /“tip” is not known here/,
    ],
    [
      'a clause is of no kind there is',
      withChange((of) => {
        of.clauses = [{ ...written.clauses[1], kind: 'gift' }];
      }),
      '/clauses/0/kind',
      /“gift” is not a kind of clause/,
    ],
    [
      'a clause fits a call there is not',
      withChange((of) => {
        of.clauses = [{ ...written.clauses[1], for: { calls: ['party'] } }];
      }),
      '/clauses/0/for/calls/0',
      /./,
    ],
    [
      'an amount has half a penny',
      withChange((of) => {
        of.clauses = [{ ...written.clauses[1], terms: { price: '60.005' } }];
      }),
      '/clauses/0/terms/price',
      /more decimals/,
    ],
  ])('%s', (_, text, field, sentence) => {
    const read = readFile(text);
    expect(refused(read) && { field: read.field, says: sentence.test(read.sentence) }).toEqual({
      field,
      says: true,
    });
  });
});
