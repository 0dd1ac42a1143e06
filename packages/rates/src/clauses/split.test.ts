// Who pays what the clauses charge, what is left of it when a call falls, and what is taken off it.

import { describe, expect, it } from 'vitest';
import type { Given } from '../given.ts';
import { pounds, priced } from '../priced.ts';
import type { WrittenClause } from '../tariff.ts';

const hours: WrittenClause = { id: 'hours', kind: 'hourly', terms: { price: '40.00' } };
const halves = (of?: string[]): WrittenClause => ({
  id: 'halves',
  kind: 'split',
  terms: {
    ...(of ? { of } : {}),
    among: [
      { payer: 'school', parts: 1 },
      { payer: 'family', parts: 1 },
    ],
  },
});
const late: WrittenClause = {
  id: 'late',
  kind: 'cancellation',
  terms: { scale: [], otherwise: { owes: 'all' } },
};
const payers = (clauses: WrittenClause[], facts: Given) =>
  priced(clauses, facts).payers.map(({ payer, total }) => [payer, pounds(total)]);

describe('school and family share the hours equally', () => {
  it('and so what is left of an hour that is cancelled late', () => {
    const facts: Given = { calls: ['2 × rehearsal 60'], fallen: [{ call: 1, at: '2026-03-03T09:00' }] };
    expect(payers([hours, halves(['hours']), late], facts)).toEqual([
      ['school', '40.00'],
      ['family', '40.00'],
    ]);
  });

  it('and so what a discount takes off them', () => {
    const off: WrittenClause = {
      id: 'off',
      kind: 'discount',
      terms: { what: 'Student', by: { as: 'share', share: 5000 }, on: ['hours'] },
    };
    expect(payers([hours, off, halves(['hours'])], { calls: ['rehearsal 60'] })).toEqual([
      ['school', '10.00'],
      ['family', '10.00'],
    ]);
  });

  it('and so what a week takes off them at most', () => {
    const week: WrittenClause = {
      id: 'week',
      kind: 'limit',
      terms: { on: ['hours'], each: 'week', most: '60.00' },
    };
    expect(payers([hours, week, halves(['hours'])], { calls: ['2 × rehearsal 60'] })).toEqual([
      ['school', '30.00'],
      ['family', '30.00'],
    ]);
  });

  it('while what another clause charges stays with whoever it names', () => {
    const fee: WrittenClause = {
      id: 'fee',
      kind: 'fixed',
      payer: 'hall',
      terms: { price: '90.00', each: 'work' },
    };
    expect(payers([hours, fee, halves(['hours'])], { calls: ['rehearsal 60'], works: ['Song'] })).toEqual([
      ['school', '20.00'],
      ['family', '20.00'],
      ['hall', '90.00'],
    ]);
  });

  it('to the penny over twenty lessons of 45.25: 452.50 each, and no odd pennies for the first', () => {
    const lesson: WrittenClause = { id: 'lesson', kind: 'fixed', terms: { price: '45.25' } };
    expect(payers([lesson, halves()], { calls: ['20 × lesson 30'] })).toEqual([
      ['school', '452.50'],
      ['family', '452.50'],
    ]);
  });
});
