// A limit beside what it is rounded to, and beside what is charged for longer than it holds.

import { refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { pounds, priced, tariffOf } from '../priced.ts';
import { readTariff, sentencesOf, type WrittenClause } from '../tariff.ts';

const hours: WrittenClause = { id: 'hours', kind: 'hourly', terms: { price: '40.00' } };
const limit = (terms: object): WrittenClause => ({
  id: 'limit',
  kind: 'limit',
  terms: { on: ['hours'], ...terms },
});
const whyNot = (clauses: WrittenClause[]) => {
  const read = readTariff({ name: 'A', currency: 'GBP', version: 1, from: '2026-01-01', clauses });
  return refused(read) ? read.sentence : undefined;
};

describe('what is rounded', () => {
  it.each<[string, object, string]>([
    [
      'up, is still no more than the most: 110.00 is 90.00, not 120.00',
      { most: '100.00', rounded: { to: '30.00' } },
      '90.00',
    ],
    [
      'down, is still no less than the least: 110.00 is 150.00, not 120.00',
      { least: '130.00', rounded: { to: '30.00', way: 'down' } },
      '150.00',
    ],
    [
      'up within the most, is rounded up: 110.00 is 120.00',
      { most: '125.00', rounded: { to: '30.00' } },
      '120.00',
    ],
    [
      'to the nearest, is still no more than the most: 110.00 is 80.00',
      { most: '100.00', rounded: { to: '80.00', way: 'to the nearest' } },
      '80.00',
    ],
  ])('%s', (_, terms, total) => {
    expect(pounds(priced([hours, limit(terms)], { calls: ['rehearsal 165'] }).total)).toBe(total);
  });

  it('to a multiple of which none lies between the least and the most is refused', () => {
    expect(whyNot([hours, limit({ least: '95.00', most: '100.00', rounded: { to: '30.00' } })])).toBe(
      'Clause “limit”: No multiple of what it is rounded to lies within its bounds: change one of the amounts.',
    );
    expect(whyNot([hours, limit({ most: '20.00', rounded: { to: '30.00' } })])).toBe(
      'Clause “limit”: No multiple of what it is rounded to lies within its bounds: change one of the amounts.',
    );
  });
});

describe('a limit says itself', () => {
  it.each<[string, object]>([
    ['What “hours” charges is at most 100.00 for the engagement.', { most: '100.00' }],
    [
      'Quiet weeks: what “hours” charges is at least 60.00 a week.',
      { what: 'Quiet weeks', each: 'week', least: '60.00' },
    ],
    [
      'What “hours” charges is at most 100.00 and rounded up to a multiple of 30.00 within that for the engagement.',
      { most: '100.00', rounded: { to: '30.00' } },
    ],
  ])('%s', (said, terms) => {
    expect(sentencesOf(tariffOf([hours, limit(terms)]), 'en-GB').at(-1)?.sentence).toBe(said);
  });
});

describe('what is charged for longer than a limit holds', () => {
  const week: WrittenClause = { id: 'week', kind: 'fixed', terms: { price: '400.00', each: 'week' } };

  it('has no part for one day, and is refused', () => {
    expect(whyNot([week, limit({ on: ['week'], each: 'day', most: '100.00' })])).toBe(
      'Clause “limit” is reckoned for each day, and “week” charges a week: that is no part of one day. Let “limit” be for as long, or name other clauses in it.',
    );
  });

  it('is held for as long or for longer', () => {
    for (const each of ['week', 'month', 'engagement'])
      expect(whyNot([week, limit({ on: ['week'], each, most: '100.00' })])).toBeUndefined();
  });
});
