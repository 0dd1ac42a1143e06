// An entitlement's own statement: what was granted, drawn, left, lapsed or lost, occasion by occasion, in sentences.

import { describe, expect, it } from 'vitest';
import type { Given } from '../given.ts';
import { pounds, priced, tariffOf } from '../priced.ts';
import { sentencesOf, type WrittenClause } from '../tariff.ts';

const covered = (terms: object): WrittenClause => ({
  id: 'covered',
  kind: 'entitlement',
  terms: { ...terms },
});
const hours: WrittenClause = { id: 'hours', kind: 'hourly', terms: { price: '40.00' } };

/** The statement of the one entitlement, read aloud. */
function told(terms: object, facts: Given, more: WrittenClause[] = []): string[] {
  const [drawn] = priced([covered(terms), hours, ...more], facts).entitlements;
  return (drawn?.grants ?? []).flatMap(({ begins, draws, missed, ends }) => [
    begins,
    ...[...draws, ...missed].map(({ says }) => says),
    ...(ends ? [ends] : []),
  ]);
}

describe('hours covered in all', () => {
  it('tell each call that drew, what it left, and what lies beyond them', () => {
    const facts = {
      calls: ['rehearsal 90 on 2026-03-02', 'rehearsal 60 on 2026-03-03', 'recital 60 on 2026-03-04'],
    };
    expect(told({ minutes: 120 }, facts)).toEqual([
      'Granted: 2 h.',
      'Rehearsal on 2 March 2026 draws 1.5 h, which leaves 0.5 h.',
      'Rehearsal on 3 March 2026 draws 0.5 h of its 1 h, which leaves nothing; beyond it: 0.5 h.',
      'Recital on 4 March 2026 draws nothing: nothing is left; beyond it: 1 h.',
    ]);
  });

  it('tell what is left, in the order in which calls drew: the exam first', () => {
    const facts = { calls: ['rehearsal 60 on 2026-03-02', 'mock exam: exam 20 on 2026-03-09'] };
    expect(told({ minutes: 120, first: ['exam'] }, facts)).toEqual([
      'Granted: 2 h.',
      'Mock exam on 9 March 2026 draws 20 min, which leaves 100 min.',
      'Rehearsal on 2 March 2026 draws 1 h, which leaves 40 min.',
      'Left: 40 min.',
    ]);
  });

  it('tell what is drawn from what is only planned: an hour played, and one to come', () => {
    const facts = { calls: ['rehearsal 60 on 2026-03-02', 'rehearsal 60 on 2027-03-03, agreed'] };
    expect(told({ minutes: 150 }, facts)).toEqual([
      'Granted: 2.5 h.',
      'Rehearsal on 2 March 2026 draws 1 h, which leaves 1.5 h.',
      'Rehearsal on 3 March 2027 is to draw 1 h, which leaves 0.5 h.',
      'Left: 0.5 h.',
    ]);
    expect(priced([covered({ minutes: 150 }), hours], facts).entitlements).toMatchObject([
      { used: 120, planned: 60, left: 30, grants: [{ used: 120, planned: 60 }] },
    ]);
  });

  it('are all left where nothing drew', () => {
    expect(told({ minutes: 120 }, {})).toEqual(['Granted: 2 h.', 'Left: 2 h.']);
  });
});

describe('hours covered each week', () => {
  const facts = { calls: ['lesson 30 on 2026-03-04', 'lesson 90 on 2026-03-11'] };

  it('lapse with the week where they serve no other', () => {
    expect(told({ minutes: 60, each: 'week' }, facts)).toEqual([
      'Granted for the week of 2 March 2026: 1 h.',
      'Lesson on 4 March 2026 draws 0.5 h, which leaves 0.5 h.',
      'Lapsed with the week: 0.5 h.',
      'Granted for the week of 9 March 2026: 1 h.',
      'Lesson on 11 March 2026 draws 1 h of its 1.5 h, which leaves nothing; beyond it: 0.5 h.',
    ]);
  });

  it('go over to the next where they do', () => {
    expect(told({ minutes: 60, each: 'week', rollsOver: true }, facts)).toEqual([
      'Granted for the week of 2 March 2026: 1 h.',
      'Lesson on 4 March 2026 draws 0.5 h, which leaves 0.5 h.',
      'Brought over to the next week: 0.5 h.',
      'Granted for the week of 9 March 2026: 1 h, and 0.5 h brought over.',
      'Lesson on 11 March 2026 draws 1.5 h, which leaves nothing.',
    ]);
  });

  it('come to what was granted, used and left in all: 2 h, 1.5 h, and 0.5 h lapsed', () => {
    const [drawn] = priced([covered({ minutes: 60, each: 'week' }), hours], facts).entitlements;
    expect(drawn).toMatchObject({ granted: 120, used: 90, left: 0, lapsed: 30 });
  });
});

describe('a week without a call', () => {
  const facts = { calls: ['lesson 30 on 2026-03-04', 'lesson 150 on 2026-03-18'] };
  const rolling = { minutes: 60, each: 'week', rollsOver: true };

  it('is granted too where hours roll over, and passes on all it has', () => {
    expect(told(rolling, facts)).toEqual([
      'Granted for the week of 2 March 2026: 1 h.',
      'Lesson on 4 March 2026 draws 0.5 h, which leaves 0.5 h.',
      'Brought over to the next week: 0.5 h.',
      'Granted for the week of 9 March 2026: 1 h, and 0.5 h brought over.',
      'Brought over to the next week: 1.5 h.',
      'Granted for the week of 16 March 2026: 1 h, and 1.5 h brought over.',
      'Lesson on 18 March 2026 draws 2.5 h, which leaves nothing.',
    ]);
  });

  it('leaves nothing to pay beyond: 30 + 60 + 60 minutes are all that the second lesson needs', () => {
    expect(pounds(priced([covered(rolling), hours], facts).total)).toBe('0.00');
  });

  it('passes on as much where the call of the first week fell in time', () => {
    const notice: WrittenClause = {
      id: 'notice',
      kind: 'cancellation',
      terms: { scale: [{ before: 24, owes: { owes: 'nothing' } }], otherwise: { owes: 'all' } },
    };
    const fallen = [{ call: 0, at: '2026-03-01T09:00' }];
    // Two whole hours and the one of its own week serve the second lesson.
    expect(told(rolling, { ...facts, fallen }, [notice])).toEqual([
      'Granted for the week of 2 March 2026: 1 h.',
      'Brought over to the next week: 1 h.',
      'Granted for the week of 9 March 2026: 1 h, and 1 h brought over.',
      'Brought over to the next week: 2 h.',
      'Granted for the week of 16 March 2026: 1 h, and 2 h brought over.',
      'Lesson on 18 March 2026 draws 2.5 h, which leaves 0.5 h.',
      'Left: 0.5 h.',
    ]);
  });

  it('grants nothing where what is left lapses', () => {
    const [drawn] = priced([covered({ minutes: 60, each: 'week' }), hours], facts).entitlements;
    expect(drawn).toMatchObject({ granted: 120, used: 90, left: 0, lapsed: 30 });
  });
});

it('hours that lapsed are not left, and the line says so', () => {
  const facts = { calls: ['lesson 30 on 2026-03-04', 'lesson 60 on 2026-03-11'] };
  const [line] = priced([covered({ minutes: 60, each: 'week' }), hours], facts).lines;
  expect(line?.facts).toEqual([
    { name: 'granted', value: '2 h' },
    { name: 'used', value: '1.5 h' },
    { name: 'left', value: '0 h' },
    { name: 'lapsed', value: '0.5 h' },
  ]);
});

describe('hours covered each term', () => {
  const terms = ['spring 2026-01-12 to 2026-05-08', 'fall 2026-08-24 to 2026-12-11'];

  it('are not granted for a call outside both terms', () => {
    const calls = ['lesson 60 on 2026-09-02', 'lesson 120 on 2026-12-20'];
    expect(told({ minutes: 120, each: 'term' }, { terms, calls })).toEqual([
      'Granted for fall: 2 h.',
      'Lesson on 2 September 2026 draws 1 h, which leaves 1 h.',
      'Left: 1 h.',
    ]);
    // The lesson of two hours in the holidays is 80.00.
    expect(pounds(priced([covered({ minutes: 120, each: 'term' }), hours], { terms, calls }).total)).toBe(
      '80.00',
    );
  });

  it('roll over a term without a call', () => {
    const three = [...terms, 'spring again 2027-01-11 to 2027-05-07'];
    const calls = ['lesson 60 on 2026-03-04', 'lesson 180 on 2027-02-03'];
    const rolling = covered({ minutes: 60, each: 'term', rollsOver: true });
    // None of the first hour is left; the fall leaves one, and with that of the spring two of three are covered.
    expect(pounds(priced([rolling, hours], { terms: three, calls }).total)).toBe('40.00');
  });

  it('are told by the name of the term, with what the term before left', () => {
    const facts = { terms, calls: ['lesson 60 on 2026-09-02'], rolledOver: { covered: 45 } };
    expect(told({ minutes: 60, each: 'term', rollsOver: true }, facts)).toEqual([
      'Granted for fall: 1 h, and 0.75 h brought over.',
      'Lesson on 2 September 2026 draws 1 h, which leaves 0.75 h.',
      'Left: 0.75 h.',
    ]);
  });
});

describe('calls covered', () => {
  it('tell which was the first, and that none is left for the third', () => {
    const facts = { calls: ['class 40 on 2026-03-02', 'class 20 on 2026-03-03', 'class 30 on 2026-03-04'] };
    expect(told({ calls: 2 }, facts)).toEqual([
      'Granted: 2 calls.',
      'Class on 2 March 2026 draws 40 min (call 1 of 2).',
      'Class on 3 March 2026 draws 20 min (call 2 of 2).',
      'Class on 4 March 2026 draws nothing: the 2 calls are drawn; beyond it: 0.5 h.',
    ]);
  });

  it('tell time and calls where both are granted', () => {
    expect(told({ calls: 2, minutes: 60, each: 'month' }, { calls: ['class 40 on 2026-03-02'] })).toEqual([
      'Granted for March 2026: 1 h, for at most 2 calls.',
      'Class on 2 March 2026 draws 40 min (call 1 of 2), which leaves 20 min.',
      'Left: 20 min, for at most 1 call.',
    ]);
  });

  it('tell which came without a pause', () => {
    const facts = {
      calls: ['rehearsal 30 on 2026-03-04 at 10:00', 'rehearsal 30 on 2026-03-04 at 10:30'],
    };
    expect(told({ minutes: 120, inARow: 1 }, facts)).toEqual([
      'Granted: 2 h.',
      'Rehearsal on 4 March 2026 draws 0.5 h, which leaves 1.5 h.',
      'Rehearsal on 4 March 2026 draws nothing: no more than 1 call without a pause; beyond it: 0.5 h.',
      'Left: 1.5 h.',
    ]);
  });
});

it.each<[string, WrittenClause]>([
  [
    'The payer covers 2 calls in all, of recitals and juries, juries first; what lies beyond is charged by the other clauses.',
    { ...covered({ calls: 2, first: ['jury'] }), for: { calls: ['recital', 'jury'] } },
  ],
  [
    'The payer covers one call each term, up to half an hour; what lies beyond is charged by the other clauses.',
    covered({ calls: 1, minutes: 30, each: 'term' }),
  ],
  [
    'The payer covers one hour of calls each week; what one week leaves serves the next; what lies beyond is charged by the other clauses.',
    covered({ minutes: 60, each: 'week', rollsOver: true }),
  ],
])('an entitlement says “%s”', (said, clause) => {
  expect(sentencesOf(tariffOf([clause]), 'en-GB')[0]?.sentence).toBe(said);
});

it('hours covered for others than this soloist are on no statement of theirs', () => {
  const strings: WrittenClause = { ...covered({ minutes: 120 }), for: { instruments: ['violin'] } };
  expect(
    priced([strings, hours], { calls: ['lesson 60'], soloist: { instrument: 'flute' } }).entitlements,
  ).toEqual([]);
});

it('hours that late music has lost are granted and lost, and nothing draws on them', () => {
  const late: WrittenClause = {
    id: 'music',
    kind: 'late-score',
    terms: { before: 'first call', steps: [{ days: 14, means: { as: 'hours lost', of: ['covered'] } }] },
  };
  const facts = { calls: ['rehearsal 60 on 2026-03-20'], works: ['Sonata, came 2026-03-10'] };
  expect(told({ minutes: 120 }, facts, [late])).toEqual([
    'Granted: 2 h.',
    'Lost: 2 h (Sonata: wanted by 6 March 2026, 4 days late).',
  ]);
});
