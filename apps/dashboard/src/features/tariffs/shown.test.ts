// What is added to a clause can be read at once, to be typed over; and what its sentence asks is not asked twice.

import { currency } from '@colla/money';
import { KINDS } from '@colla/rates';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { groupOf } from './clause-groups.ts';
import { areSelector, selectorParameters, termsParameters } from './clause-parameters.ts';
import { leftOf } from './left.ts';
import { freshOf, turnTo, typeFields } from './shown.ts';
import { fieldsOf } from './typed.ts';

const british = { currency: granted(currency('GBP')), locale: 'en-GB' };
const leaves = termsParameters('cancellation', british).find(({ name }) => name === 'otherwise')?.shape;
const lengths = selectorParameters.find(({ name }) => name === 'minutes')?.shape;

describe('what is added', () => {
  it('begins with figures: half of it where a share is chosen, ten pounds where a sum is', () => {
    if (leaves?.is !== 'variant') throw new Error('what is left to pay is one of several');
    expect(turnTo(leaves, { owes: 'all' }, 'share', british)).toEqual({ owes: 'share', share: '50' });
    expect(turnTo(leaves, { owes: 'all' }, 'amount', british)).toEqual({ owes: 'amount', amount: '10.00' });
  });

  it('begins hours of the day with an evening', () => {
    const hours = selectorParameters.find(({ name }) => name === 'hours')?.shape;
    expect(hours && freshOf(hours, british)).toEqual({ from: '20:00', until: '23:00' });
  });

  it('begins a range with its end, and leaves its beginning open', () => {
    expect(lengths && freshOf(lengths, british)).toEqual({ from: '', to: '60' });
  });
});

describe('what is left to ask', () => {
  const parts = termsParameters('hourly', british);
  const fields = typeFields(parts, { price: '60', band: { from: '50', to: '70' } }, british);
  const left = (...said: string[]) => leftOf(parts, fields, '/terms', new Set(said)).map(({ name }) => name);

  it('is what the sentence has no field for', () => {
    expect(left()).toContain('price');
    expect(left('/terms/price', '/terms/per')).not.toContain('price');
    expect(left('/terms/price', '/terms/per')).not.toContain('per');
  });

  it('is also what may be left out whole, though the sentence has fields for all of it', () => {
    expect(left('/terms/band/from', '/terms/band/to')).toContain('band');
  });

  it('is a choice of which the sentence has a field for the figure only', () => {
    const of = termsParameters('cancellation', british);
    const typed = typeFields(of, { scale: [], otherwise: { owes: 'share', share: 5000 } }, british);
    const names = (said: string[]) => leftOf(of, typed, '/terms', new Set(said)).map(({ name }) => name);
    expect(fieldsOf(typed.otherwise).share).toBe('50');
    expect(names(['/terms/otherwise/share'])).toContain('otherwise');
    expect(names(['/terms/otherwise', '/terms/otherwise/share'])).not.toContain('otherwise');
  });
});

it('which calls a package includes is asked as it is for the clause itself: condition by condition', () => {
  const includes = termsParameters('package', british).find(({ name }) => name === 'includes')?.shape;
  if (includes?.is !== 'list' || includes.of.is !== 'group') throw new Error('what is included is a list');
  const parts = includes.of.parts.filter(({ shape }) => shape.is === 'group' && areSelector(shape.parts));
  expect(parts.map(({ name }) => name)).toEqual(['of']);
});

it('every kind of clause stands with those that do the like', () => {
  const groups = new Map(KINDS.map((kind) => [kind, groupOf(kind)]));
  expect(groups.get('fixed')).toBe('price');
  expect(groups.get('entitlement')).toBe('covered');
  expect(groups.get('late-score')).toBe('conditions');
  expect(groups.get('cancellation')).toBe('changes');
  expect(groups.get('split')).toBe('payers');
  expect(groups.get('late-payment')).toBe('paying');
  expect(groups.get('tax')).toBe('tax');
});
