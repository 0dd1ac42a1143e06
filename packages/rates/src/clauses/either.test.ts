// Two ways of charging: the lower or the higher of them holds, for the engagement or occasion by occasion.

import { refused } from '@colla/refusal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { midnight, playedFacts } from '../../dealt/facts.ts';
import { tariffOf as dealtOf, journeys, pools, prices, tariffWith } from '../../dealt/tariffs.ts';
import type { Facts } from '../facts.ts';
import { pounds, priced, tariffOf } from '../priced.ts';
import { statement } from '../statement.ts';
import { readTariff, sentencesOf, type Tariff, type WrittenClause } from '../tariff.ts';

const hours: WrittenClause = { id: 'hours', kind: 'hourly', terms: { price: '40.00' } };
const day: WrittenClause = { id: 'day', kind: 'fixed', terms: { price: '150.00', each: 'day' } };
const week: WrittenClause = { id: 'week', kind: 'fixed', terms: { price: '500.00', each: 'week' } };
const either = (keep: 'lower' | 'higher', each: string, ...ways: string[][]): WrittenClause => ({
  id: 'either',
  kind: 'either',
  terms: { keep, each, ways: ways.map((of) => ({ of })) },
});
const owed = (clauses: WrittenClause[], facts: Parameters<typeof priced>[1]) =>
  pounds(priced(clauses, facts).total);

// Monday three hours (120.00), Tuesday five (200.00).
const twoDays = { calls: ['rehearsal 180 on 2026-03-02', 'rehearsal 300 on 2026-03-03'] };

describe('the hours or the day', () => {
  it.each([
    ['the lower of each day: 120 + 150', 'lower', 'day', '270.00'],
    ['the higher of each day: 150 + 200', 'higher', 'day', '350.00'],
    ['the lower of all: 320 by the hour, 300 by the day', 'lower', 'engagement', '300.00'],
    ['the higher of all: 320', 'higher', 'engagement', '320.00'],
  ] as const)('%s', (_, keep, each, total) => {
    expect(owed([hours, day, either(keep, each, ['hours'], ['day'])], twoDays)).toBe(total);
  });

  it('says on each line both figures, and that the lower of them holds', () => {
    const bill = priced([hours, day, either('lower', 'day', ['hours'], ['day'])], twoDays);
    const facts = bill.lines.map(({ what, facts }) => [
      what,
      facts.find(({ name }) => name === 'the lower of')?.value,
    ]);
    expect(facts).toEqual([
      ['Rehearsal', '120.00 with “hours” and 150.00 with “day”'],
      ['Day', '200.00 with “hours” and 150.00 with “day”'],
    ]);
  });

  it('leaves other calls to their own price, and an added one changes nothing on another day', () => {
    const jury: WrittenClause = {
      id: 'jury',
      kind: 'fixed',
      for: { calls: ['jury'] },
      terms: { price: '50.00' },
    };
    const choice = either('lower', 'day', ['hours'], ['day']);
    const calls = [...twoDays.calls, 'jury 20 on 2026-03-04', 'rehearsal 60 on 2026-03-05'];
    // 270.00 as before, 50.00 for the jury, 40.00 for the hour.
    expect(owed([hours, day, jury, choice], { calls })).toBe('360.00');
  });

  it('of what is cancelled late holds half of the lower: of 120.00, not of 150.00', () => {
    const notice: WrittenClause = {
      id: 'notice',
      kind: 'cancellation',
      terms: { scale: [], otherwise: { owes: 'share', share: 5000 } },
    };
    const facts = { calls: ['rehearsal 180'], fallen: [{ call: 0, at: '2026-03-02T09:00' }] };
    expect(owed([hours, day, notice, either('lower', 'day', ['hours'], ['day'])], facts)).toBe('60.00');
  });
});

describe('what is charged for several days at once, weighed day by day', () => {
  const choice = either('lower', 'day', ['hours'], ['day']);

  it('is the lower of each day, of which half is owed where all is cancelled: half of 120 and 150', () => {
    const notice: WrittenClause = {
      id: 'notice',
      kind: 'cancellation',
      terms: { of: 'engagement', scale: [], otherwise: { owes: 'share', share: 5000 } },
    };
    const fallen = [0, 1].map((call) => ({ call, at: '2026-03-01T09:00' }));
    expect(owed([hours, day, choice, notice], { ...twoDays, fallen })).toBe('135.00');
  });

  it('is what calls drew on hours covered: 120 of them on Monday, and the day at 150 on Tuesday', () => {
    const covered: WrittenClause = {
      id: 'covered',
      kind: 'entitlement',
      terms: { minutes: 600, each: 'day', price: '40.00' },
    };
    expect(owed([day, covered, either('lower', 'day', ['covered'], ['day'])], twoDays)).toBe('270.00');
  });
});

describe('a fee for each day from the first to the last', () => {
  const through: WrittenClause = {
    ...day,
    terms: { price: '90.00', each: 'day', through: true },
  };
  const calls = [
    'rehearsal 180 on 2026-03-02',
    'rehearsal 60 on 2026-03-03',
    'rehearsal 180 on 2026-03-04',
    'rehearsal 180 on 2026-03-06',
  ];

  it('is not owed for a day that is charged by the hour: 90, 40, 90, 90 without a call, 90', () => {
    expect(owed([hours, through, either('lower', 'day', ['hours'], ['day'])], { calls })).toBe('400.00');
  });

  it('is not owed for one whose calls are none of its own: 90, the lesson at 40, 90', () => {
    const rehearsals = { ...through, for: { calls: ['rehearsal' as const] } };
    const facts = { calls: [calls[0] ?? '', 'lesson 60 on 2026-03-03', calls[2] ?? ''] };
    expect(owed([hours, rehearsals, either('lower', 'day', ['hours'], ['day'])], facts)).toBe('220.00');
  });
});

describe('the fare or the way', () => {
  const way: WrittenClause = { id: 'way', kind: 'travel', terms: { perUnit: '0.40' } };
  const fare: WrittenClause = { id: 'fare', kind: 'cost', terms: {} };
  const choice = either('lower', 'engagement', ['fare'], ['way']);
  it.each([
    ['where no fare is told, 60 km at 0.40', { legs: ['60 km'] }, '24.00'],
    ['where no journey is told, the fare', { costs: ['Fare 31.00'] }, '31.00'],
    ['a fare of nothing is a fare', { legs: ['60 km'], costs: ['Fare 0.00'] }, '0.00'],
    ['where neither is told, nothing', {}, '0.00'],
  ])('%s', (_, facts, total) => {
    expect(owed([fare, way, choice], facts)).toBe(total);
  });

  it('says that of the one nothing is told', () => {
    const [line] = priced([fare, way, choice], { legs: ['60 km'] }).lines;
    expect(line?.facts.find(({ name }) => name === 'the lower of')?.value).toBe(
      '24.00 with “way”; nothing is told of “fare”',
    );
  });
});

describe('three ways', () => {
  it('hours 480, days 450, the week 500: the days hold', () => {
    const choice = either('lower', 'engagement', ['hours'], ['day'], ['week']);
    expect(owed([hours, day, week, choice], { calls: ['3 × rehearsal 240'] })).toBe('450.00');
  });
});

describe('a way that leaves a call without a price', () => {
  it('is no way, however low: the lesson is not priced by the day', () => {
    const rehearsals = { ...day, for: { calls: ['rehearsal' as const] } };
    const facts = { calls: ['rehearsal 240', 'lesson 60'] };
    // By the hour 160 + 40; by the day 150 and no price for the lesson.
    expect(owed([hours, rehearsals, either('lower', 'engagement', ['hours'], ['day'])], facts)).toBe(
      '200.00',
    );
  });
});

describe('a choice for some engagements only', () => {
  it('lets the way named first hold for the others', () => {
    const choice: WrittenClause = {
      ...either('lower', 'engagement', ['hours'], ['day']),
      for: { memberships: ['member'] },
    };
    const clauses = [hours, day, choice];
    const facts = { calls: ['rehearsal 300'] };
    expect(owed(clauses, { ...facts, soloist: { membership: 'member' } })).toBe('150.00');
    expect(owed(clauses, facts)).toBe('200.00');
    expect(sentencesOf(tariffOf(clauses), 'en-GB').at(-1)?.sentence).toBe(
      'The fee is reckoned with “hours” or with “day”, whichever is lower (member); otherwise with “hours”.',
    );
  });
});

describe('what is held together over several days', () => {
  const most: WrittenClause = {
    id: 'most',
    kind: 'limit',
    terms: { on: ['hours', 'day'], each: 'week', most: '400.00' },
  };
  it('does not weigh on one of them: 150 and 200 by the day, and the week still comes to 400 at most', () => {
    const choice = either('higher', 'day', ['hours'], ['day']);
    expect(owed([hours, day, choice], twoDays)).toBe('350.00');
    const three = { calls: [...twoDays.calls, 'rehearsal 60 on 2026-03-04'] };
    // 150 + 200 + 150 are 500, and 400 at most.
    expect(owed([hours, day, choice, most], three)).toBe('400.00');
  });
});

describe('with a package or without it', () => {
  const pack: WrittenClause = {
    id: 'pack',
    kind: 'package',
    terms: { price: '150.00', what: 'Package', includes: [{ of: {}, minutes: 240 }] },
  };
  const choice = either('lower', 'engagement', ['pack'], []);
  it.each([
    ['three hours at 40.00 cost less', 'rehearsal 180', '120.00'],
    ['five hours are 200.00 without it, and with it 150.00 and one hour', 'rehearsal 300', '190.00'],
  ])('%s', (_, call, total) => {
    expect(owed([hours, pack, choice], { calls: [call] })).toBe(total);
  });

  it('says so', () => {
    expect(sentencesOf(tariffOf([hours, pack, choice]), 'en-GB').at(-1)?.sentence).toBe(
      'The fee is reckoned with “pack” or without, whichever is lower.',
    );
  });
});

describe('two choices', () => {
  const way: WrittenClause = { id: 'way', kind: 'travel', terms: { perUnit: '0.50' } };
  const fare: WrittenClause = { id: 'fare', kind: 'cost', terms: {} };
  it('are weighed each for itself: the day at 150, the fare at 22', () => {
    const travel: WrittenClause = {
      id: 'travel',
      kind: 'either',
      terms: { keep: 'lower', ways: [{ of: ['way'] }, { of: ['fare'] }] },
    };
    const facts = { calls: ['rehearsal 300'], legs: ['50 km'], costs: ['Fare 22.00'] };
    expect(owed([hours, day, either('lower', 'day', ['hours'], ['day']), way, fare, travel], facts)).toBe(
      '172.00',
    );
  });
});

describe('whatever the calls', () => {
  const dealt = fc.constantFrom('call', 'day', 'week', 'month', 'term', 'engagement');
  const sum = (clauses: WrittenClause[], facts: Facts) => priced(clauses, facts).total;
  const byCall: WrittenClause = { id: 'call', kind: 'fixed', terms: { price: '70.00' } };

  it('the lower is never more than either way alone, and the higher never less', () => {
    fc.assert(
      fc.property(playedFacts, dealt, (facts, each) => {
        const alone = [sum([hours], facts), sum([byCall], facts)];
        const [lower, higher] = (['lower', 'higher'] as const).map((keep) =>
          sum([hours, byCall, either(keep, each, ['hours'], ['call'])], facts),
        );
        for (const one of alone) {
          expect(lower).toBeLessThanOrEqual(one);
          expect(higher).toBeGreaterThanOrEqual(one);
        }
        expect((lower ?? 0n) + (higher ?? 0n)).toBe((alone[0] ?? 0n) + (alone[1] ?? 0n));
      }),
      { numRuns: 100 },
    );
  });
});

describe('whatever the tariff', () => {
  const flat: WrittenClause = { id: 'flat', kind: 'fixed', terms: { price: '70' } };
  const dealtTariff = tariffWith(prices, pools, journeys);
  const total = (of: Tariff, clauses: readonly WrittenClause[], facts: Facts) =>
    statement(facts, { tariff: dealtOf(of.currency, clauses), locale: 'en-GB' }, midnight).total;

  it('an engagement costs exactly the lower, or the higher, of what it would cost in either way alone', () => {
    fc.assert(
      fc.property(playedFacts, dealtTariff, (facts, of) => {
        const { clauses } = of.written;
        const byTheHour = total(of, clauses, facts);
        const flatly = total(of, [...clauses.filter(({ id }) => id !== 'hours'), flat], facts);
        const kept = (['lower', 'higher'] as const).map((keep) =>
          total(of, [...clauses, flat, either(keep, 'engagement', ['hours'], ['flat'])], facts),
        );
        expect(kept).toEqual([byTheHour, flatly].toSorted((one, other) => (one < other ? -1 : 1)));
      }),
      { numRuns: 100 },
    );
  });
});

describe('a choice is refused', () => {
  const refusal = (...clauses: WrittenClause[]) => {
    const read = readTariff({ name: 'A', currency: 'GBP', version: 1, from: '2026-01-01', clauses });
    return refused(read) ? read.sentence : 'read';
  };
  const other: WrittenClause = { ...either('higher', 'day', ['hours'], ['day']), id: 'other' };
  const gate: WrittenClause = {
    id: 'due',
    kind: 'payment',
    terms: { due: [{ event: 'invoice', days: 30 }] },
  };

  it.each<[string, WrittenClause[], string]>([
    [
      'not by itself: two prices that are alternatives do not contradict',
      [hours, day, either('lower', 'day', ['hours'], ['day'])],
      'read',
    ],
    [
      'two prices in one way still do',
      [hours, day, week, either('lower', 'week', ['hours', 'day'], ['week'])],
      'Clauses “hours” and “day” contradict: both put a price on the same calls. Let one of them ask for something more (a kind of call, a day, a level), or remove it.',
    ],
    [
      'of a clause named in both ways',
      [hours, day, either('lower', 'day', ['hours'], ['hours', 'day'])],
      'Clause “either”: One clause is named twice: a clause belongs to one way of charging only.',
    ],
    [
      'of a clause of which another says whether it holds',
      [hours, day, either('lower', 'day', ['hours'], ['day']), other],
      'Clauses “either” and “other” contradict: both say whether “hours” holds. Name it in one of them only.',
    ],
    [
      'of a clause that charges nothing',
      [hours, gate, either('lower', 'engagement', ['hours'], ['due'])],
      'Clause “either” cannot weigh “due”: it is a clause of the kind “Payment term” and charges nothing. Name clauses that charge.',
    ],
    [
      'day by day, of what is charged by the week',
      [hours, week, either('lower', 'day', ['hours'], ['week'])],
      'Clause “either” cannot weigh “week”: it charges a week, and that is no part of one day. Weigh them for the engagement.',
    ],
    [
      'week by week, of what is charged also for days without a call',
      [
        hours,
        { ...day, terms: { price: '150.00', each: 'day', through: true } },
        either('lower', 'week', ['hours'], ['day']),
      ],
      'Clause “either” cannot weigh “day”: it charges a day also where there is none, and that is for no one week. Weigh them for each day, or for the engagement.',
    ],
    [
      'day by day, of hours that roll over from one day to the next',
      [
        hours,
        { id: 'covered', kind: 'entitlement', terms: { minutes: 60, each: 'day', rollsOver: true } },
        either('lower', 'day', ['hours'], ['covered']),
      ],
      'Clause “either” cannot weigh “covered”: what it leaves of one day serves the next, and that is for no one day. Weigh them for the engagement.',
    ],
    [
      'of a clause that is not there',
      [hours, either('lower', 'engagement', ['hours'], ['day'])],
      'Clause “either” speaks of a clause “day” that is not in this tariff. Add it, or remove the name.',
    ],
  ])('%s', (_, clauses, sentence) => {
    expect(refusal(...clauses)).toBe(sentence);
  });
});
