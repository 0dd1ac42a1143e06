import { beforeEach, describe, expect, test } from 'vitest';
import { speakIn } from '../../locale.ts';
import { emptyTerm, slipsInTerms, type TermRow } from './terms.ts';

const autumn: TermRow = { key: 0, name: 'Autumn', from: '2026-09-14', to: '2026-12-11' };
const spring: TermRow = { key: 1, name: 'Spring', from: '2027-01-11', to: '2027-04-02' };

beforeEach(() => speakIn('en-GB'));

describe('the terms of a place', () => {
  test('that follow one another are kept', () => {
    expect(slipsInTerms([autumn, spring])).toEqual([]);
  });

  test('may meet, but no day belongs to two', () => {
    const next = { ...spring, from: '2026-12-12' };
    expect(slipsInTerms([autumn, next])).toEqual([]);
    expect(slipsInTerms([autumn, { ...spring, from: '2026-12-11' }])).toEqual([
      {
        pointer: '/terms/1/from',
        detail: '“Spring” begins on 11 Dec 2026, before “Autumn” has ended. Let no day belong to two terms.',
      },
    ]);
  });

  test('are refused in whichever order they are written', () => {
    const [slip] = slipsInTerms([{ ...spring, from: '2026-12-11' }, autumn]);
    expect([slip?.pointer, slip?.detail]).toEqual([
      '/terms/1/from',
      '“Spring” begins on 11 Dec 2026, before “Autumn” has ended. Let no day belong to two terms.',
    ]);
  });

  test('have a name each, a first day and a last that is not before it', () => {
    expect(slipsInTerms([emptyTerm([])]).map(({ pointer }) => pointer)).toEqual(['/terms/0/name']);
    expect(slipsInTerms([{ ...autumn, from: '' }]).map(({ pointer }) => pointer)).toEqual(['/terms/0/from']);
    expect(slipsInTerms([{ ...autumn, to: '2026-09-13' }])[0]?.detail).toContain('ends before it begins');
  });

  test('may be called the same in every year', () => {
    const next = { ...autumn, from: '2027-09-13', to: '2027-12-10' };
    expect(slipsInTerms([autumn, spring, next])).toEqual([]);
  });
});
