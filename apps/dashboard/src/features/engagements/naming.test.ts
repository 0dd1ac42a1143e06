// Whom a name in a field means.

import { describe, expect, it } from 'vitest';
import { meantBy, toldApart } from './naming.ts';

const mill = { id: 'p1', name: 'Anna Berg', address: ['3 Mill Lane', 'Tarn'] };
const post = { id: 'p2', name: 'Anna Berg', address: [], email: 'anna@example.org' };
const ida = { id: 'p3', name: 'Ida Fenn', address: ['Hill House'] };
const known = toldApart([mill, post, ida]);

describe('people in a field', () => {
  it('are called by their name, and two of one name by address or e-mail as well', () => {
    expect(known.map(({ as }) => as)).toEqual([
      'Anna Berg (3 Mill Lane)',
      'Anna Berg (anna@example.org)',
      'Ida Fenn',
    ]);
  });

  it('who share name and address, or have none, are numbered', () => {
    const all = [mill, { ...mill, id: 'p4' }, { id: 'p5', name: 'Anna Berg', address: [] }];
    expect(toldApart(all).map(({ as }) => as)).toEqual([
      'Anna Berg (3 Mill Lane)',
      'Anna Berg (3 Mill Lane, 2)',
      'Anna Berg (3)',
    ]);
  });

  it('never are called by what is another’s whole name', () => {
    const odd = { id: 'p6', name: 'Anna Berg (3 Mill Lane)', address: [] };
    expect(toldApart([mill, post, odd]).map(({ as }) => as)).toEqual([
      'Anna Berg (3 Mill Lane, 1)',
      'Anna Berg (anna@example.org)',
      'Anna Berg (3 Mill Lane)',
    ]);
  });

  it.each([
    ['Ida Fenn', { is: 'known', id: 'p3' }],
    [' Ida Fenn ', { is: 'known', id: 'p3' }],
    ['Anna Berg (anna@example.org)', { is: 'known', id: 'p2' }],
    ['Anna Berg', { is: 'several' }],
    ['Per Fenn', { is: 'new' }],
    [' ', { is: 'nobody' }],
  ])('typed “%s” are found, or said to be several, new or nobody', (typed, meant) => {
    expect(meantBy(typed, known)).toEqual(meant);
  });
});
