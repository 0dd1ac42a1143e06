import { describe, expect, it } from 'vitest';
import { askedBy } from './asked.ts';

const lessons = {
  clauses: [
    {
      id: 'hours',
      kind: 'hourly',
      for: { memberships: ['member'], levels: ['grade 8', 'diploma'], terms: ['autumn'] },
      payer: 'family',
      terms: { price: '40.00' },
    },
    {
      id: 'late',
      kind: 'late-score',
      for: {},
      payer: 'payer',
      terms: {
        steps: [{ days: 14, means: { as: 'charge', amount: '25.00' } }],
        harder: [{ difficulty: 'hard', days: 7 }],
      },
    },
  ],
};
const preparation = {
  clauses: [
    { id: 'pages', kind: 'fixed', for: {}, payer: 'payer', terms: { price: '3.50', each: 'page' } },
    { id: 'hard', kind: 'supplement', for: { difficulties: ['very hard'] }, payer: 'payer', terms: {} },
  ],
};

describe('what the tariffs of a practice ask', () => {
  it('is the words that their clauses fit, each once and in order', () => {
    const { words } = askedBy([lessons, preparation, lessons]);
    expect(words('level')).toEqual(['diploma', 'grade 8']);
    expect(words('membership')).toEqual(['member']);
    expect(words('difficulty')).toEqual(['hard', 'very hard']);
    expect(words('term')).toEqual(['autumn']);
    expect(words('role')).toEqual(['family', 'payer']);
  });

  it('is nothing where no clause asks', () => {
    const { words, pages, sharers } = askedBy([]);
    expect([...words('level'), ...words('place')]).toEqual([]);
    expect([pages, sharers]).toEqual([false, false]);
  });

  it('is the pages of the part where one of them charges by the page', () => {
    expect(askedBy([lessons]).pages).toBe(false);
    expect(askedBy([lessons, preparation]).pages).toBe(true);
  });
});
