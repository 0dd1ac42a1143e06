import { describe, expect, test } from 'vitest';
import { emptyTerm, slipsInTerms, type TermRow } from './terms.ts';

const autumn: TermRow = { key: 0, name: 'Autumn', from: '2026-09-14', to: '2026-12-11' };
const spring: TermRow = { key: 1, name: 'Spring', from: '2027-01-11', to: '2027-04-02' };

describe('the terms of a place', () => {
  test('that follow one another are kept, whether or not days lie between', () => {
    expect(slipsInTerms([autumn, spring])).toEqual([]);
    expect(slipsInTerms([autumn, { ...spring, from: '2026-12-12' }])).toEqual([]);
  });

  test('that share a day are refused beside the first day of the later written', () => {
    const [slip] = slipsInTerms([autumn, { ...spring, from: '2026-12-11' }]);
    expect(slip?.pointer).toBe('/terms/1/from');
    expect(slip?.detail).toContain('“Autumn” and “Spring” both hold 2026-12-11');
  });

  test('have a name each, a first day and a last that is not before it', () => {
    expect(slipsInTerms([emptyTerm([])]).map(({ pointer }) => pointer)).toEqual(['/terms/0/name']);
    expect(slipsInTerms([{ ...autumn, from: '' }]).map(({ pointer }) => pointer)).toEqual(['/terms/0/from']);
    expect(slipsInTerms([{ ...autumn, to: '2026-09-13' }])[0]).toEqual({
      pointer: '/terms/0/to',
      detail: 'Autumn ends before it begins. Correct one of its two days.',
    });
  });

  test('may be called the same in every year', () => {
    const next = { ...autumn, from: '2027-09-13', to: '2027-12-10' };
    expect(slipsInTerms([autumn, spring, next])).toEqual([]);
  });
});
