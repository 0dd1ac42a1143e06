// A field that one has begun to type in stays where it is until “More” is folded.

import { currency } from '@colla/money';
import { granted } from '@colla/refusal';
import { expect, it } from 'vitest';
import { stayBelow, withoutBelow } from './below.ts';
import { piecesOf } from './blanks.ts';

const reader = { currency: granted(currency('GBP')), locale: 'en-GB' };
const all = ['/for/calls', '/terms/price', '/terms/includes'];

it('minutes that are included come into the sentence with the first key, and stay below until “More” is folded', () => {
  const before = stayBelow([], { all, said: new Set(['/for/calls', '/terms/price']), open: true });
  expect(before).toEqual(['/terms/includes']);
  expect(stayBelow(before, { all, said: new Set(all), open: true })).toEqual(['/terms/includes']);
  expect(stayBelow(before, { all, said: new Set(all), open: false })).toEqual([]);
});

it('a figure that the sentence says no longer comes to stand below', () => {
  expect(stayBelow([], { all, said: new Set(['/for/calls', '/terms/includes']), open: true })).toEqual([
    '/terms/price',
  ]);
});

it('the sentence says a figure that is asked below it, without a field for it', () => {
  const clause = { id: 'exam', kind: 'fixed', for: { calls: ['exam'] as const }, terms: { price: '60.00' } };
  const pieces = withoutBelow(piecesOf(clause, reader) ?? [], new Set(['/terms/price']));
  const said = pieces.map((piece) => (typeof piece === 'string' ? piece : `[${piece.text}]`));
  expect(said).toEqual(['[Exams]', ' are 60.00 ', '[each]', '.']);
});
