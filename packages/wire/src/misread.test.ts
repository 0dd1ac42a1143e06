import { expect, test } from 'vitest';
import { callInput, partyInput, previewInput, quoteInput } from './index.ts';
import { readBy } from './misread.ts';

const call = { kind: 'rehearsal', planned: { on: '2026-11-02', from: '10:00', until: '11:00', zone: 'UTC' } };
const party = { name: 'Sanna Ilves' };

test.each([
  ['a name left empty', partyInput, { name: '  ' }, '/name', '“name” is empty; write something.'],
  ['nothing at all', partyInput, undefined, '', 'What was sent is missing; give an object.'],
  ['a list in place of an object', partyInput, [], '', 'What was sent is not an object.'],
  ['a figure for a name', partyInput, { name: 7 }, '/name', '“name” is not text in quotes.'],
  [
    'an address of nine lines',
    partyInput,
    { ...party, address: Array(9).fill('x') },
    '/address',
    '“address” is too long; give 8 items at most.',
  ],
  [
    'a figure among the lines of an address',
    partyInput,
    { ...party, address: ['1 Quay Row', 2] },
    '/address/1',
    'Item 2 of “address” is not text in quotes.',
  ],
  [
    'an e-mail address without a place',
    partyInput,
    { ...party, email: 'sanna' },
    '/email',
    '“email” is not an e-mail address; write it as name@example.org.',
  ],
  [
    'an unknown field',
    partyInput,
    { ...party, 'a/b': 1 },
    '/a~1b',
    '“a/b” is not known here; remove it, or correct its name.',
  ],
  [
    'a time of day in words',
    callInput,
    { ...call, planned: { ...call.planned, from: 'noon' } },
    '/planned/from',
    '“from” is not a time of day; write it as 19:30.',
  ],
  [
    'an id that is none',
    quoteInput,
    { tariff: 'mine', validUntil: '2026-11-02' },
    '/tariff',
    '“tariff” is not an id that these books have given.',
  ],
  [
    'a call that was both played and missed',
    previewInput,
    {
      tariff: { name: 'x', currency: 'EUR', version: 1, from: '2026-01-01', clauses: [] },
      engagement: {
        calls: [{ ...call, played: call.planned, missed: { by: 'payer', reason: 'other' } }],
      },
    },
    '/engagement/calls/0',
    'Item 1 of “calls” turned out in two ways; say only one of played, cancelled, missed.',
  ],
])('of %s it is said where and what', (_, schema, sent, pointer, detail) => {
  expect(readBy(schema, sent)).toEqual({ misread: [{ pointer, detail }] });
});

test('what can be read comes with what is usual filled in', () => {
  expect(readBy(callInput, call)).toEqual({ value: { ...call, place: '' } });
});
