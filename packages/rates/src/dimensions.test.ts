// The rarer conditions: blocks of dates, the hour a call ends, which of its kind it is, why and when it fell, how much
// there is of the engagement, how far it is.

import { describe, expect, it } from 'vitest';
import { apart, closer, fitsCall } from './fit.ts';
import { type Given, given } from './given.ts';
import { sayCalls } from './phrases.ts';
import { POUNDS, tariffOf } from './priced.ts';
import type { Selector } from './selector.ts';
import { voice } from './voice.ts';

const english = voice('en-GB', POUNDS);
const christmas: Selector = { dates: [{ from: '12-15', until: '01-06' }] };
const thatChristmas: Selector = { dates: [{ from: '2026-12-20', until: '2027-01-02' }] };
const summer: Selector = { dates: [{ from: '06-01', until: '08-31' }] };
const second: Selector = { nth: { each: 'day', from: 2 } };
const miles: Selector = { distance: { unit: 'mile', over: 10, upTo: 30 } };

describe('of the calls of an engagement a clause fits', () => {
  const cases: [string, Selector, Given, boolean[]][] = [
    [
      'those in a season that comes back each year and runs over its end, both ends with it',
      christmas,
      {
        calls: [
          'service 60 on 2026-12-14',
          'service 60 on 2026-12-15',
          'service 60 on 2027-01-06',
          'service 60 on 2027-01-07',
          'service 60 on 2028-12-31',
        ],
      },
      [false, true, true, false, true],
    ],
    [
      'those of days dated once, in that year only',
      thatChristmas,
      { calls: ['service 60 on 2026-12-24', 'service 60 on 2027-12-24'] },
      [true, false],
    ],
    [
      'those that end late, past midnight too',
      { ends: { from: '23:00', until: '05:00' } },
      {
        calls: [
          'recital 120 on 2026-03-02 at 21:00',
          'recital 120 on 2026-03-03 at 22:30',
          'recital 119 on 2026-03-04 at 21:00',
        ],
      },
      [true, true, false],
    ],
    [
      'the second of its kind on a day, as agreed: the rehearsal that fell keeps its place',
      second,
      {
        calls: [
          'service 60 on 2026-03-08 at 09:00',
          'rehearsal 60 on 2026-03-08 at 10:00',
          'service 60 on 2026-03-08 at 11:00',
          'rehearsal 60 on 2026-03-08 at 14:00',
        ],
        fallen: [{ call: 1, at: '2026-03-01T10:00' }],
      },
      [false, false, true, true],
    ],
    [
      'those on the day of a recital, and not the recital itself',
      { sameDayAs: ['recital'] },
      {
        calls: [
          'rehearsal 60 on 2026-03-07',
          'rehearsal 60 on 2026-03-08',
          'recital 60 on 2026-03-08 at 19:00',
        ],
      },
      [false, true, false],
    ],
    [
      'those from the second week on, the first being that of the first call',
      { weeks: { from: 2 } },
      { calls: ['class 60 on 2026-03-04', 'class 60 on 2026-03-08', 'class 60 on 2026-03-09'] },
      [false, false, true],
    ],
    [
      'those that begin less than eleven hours after the last ended, and not the first',
      { pause: { to: 659 } },
      {
        calls: [
          'recital 120 on 2026-03-07 at 21:00',
          'class 60 on 2026-03-08 at 09:30',
          'class 60 on 2026-03-08 at 22:00',
        ],
      },
      [false, true, false],
    ],
    [
      'all, where they were asked for after the closing day',
      { askedOn: [{ from: '2026-02-02', until: '2026-12-31' }] },
      { askedAt: '2026-02-02T09:00', calls: ['jury 20'] },
      [true],
    ],
    [
      'none, where they were asked for on it',
      { askedOn: [{ from: '2026-02-02', until: '2026-12-31' }] },
      { askedAt: '2026-02-01T23:00', calls: ['jury 20'] },
      [false],
    ],
    [
      'those that fell for a reason, and none that took place',
      { reasons: ['illness'] },
      {
        calls: ['3 × lesson 60'],
        fallen: [
          { call: 0, at: '2026-03-01T10:00', reason: 'illness' },
          { call: 1, at: '2026-03-01T10:00', reason: 'forgotten' },
        ],
      },
      [true, false, false],
    ],
    [
      'those of which word came a day ahead, or not at all',
      { noticeHours: { to: 23 } },
      {
        calls: ['3 × lesson 60'],
        fallen: [{ call: 0, at: '2026-03-01T10:00' }, { call: 1, at: '2026-03-02T10:01' }, { call: 2 }],
      },
      [false, true, true],
    ],
    [
      'all, where five were agreed and one of them fell',
      { callsInAll: { from: 5 } },
      { calls: ['5 × lesson 60'], fallen: [{ call: 4, at: '2026-03-01T10:00' }] },
      [true, true, true, true, true],
    ],
    ['none, where only four were', { callsInAll: { from: 5 } }, { calls: ['2 × lesson 60'] }, [false, false]],
    [
      'all, where their time together is enough',
      { minutesInAll: { from: 180 } },
      { calls: ['2 × lesson 90'] },
      [true, true],
    ],
    [
      'all, where so many soloists share it',
      { sharers: { from: 4 } },
      { calls: ['recital 60'], sharers: 4 },
      [true],
    ],
    [
      'all, by the farthest journey: 30 miles is not beyond 30',
      miles,
      { calls: ['recital 60'], legs: ['8 mile', '30 mile'] },
      [true],
    ],
    ['none, where 10 miles is the farthest', miles, { calls: ['recital 60'], legs: ['10 mile'] }, [false]],
    [
      'all near ones, where there is no journey',
      { distance: { unit: 'km', upTo: 5 } },
      { calls: ['recital 60'] },
      [true],
    ],
  ];
  it.each(cases)('%s', (_, selector, short, fits) => {
    const facts = given(short, POUNDS);
    expect(facts.calls.map((call) => fitsCall(selector, call, facts))).toEqual(fits);
  });
});

describe('of two clauses', () => {
  it.each<[string, Selector, Selector, boolean]>([
    ['a dated Christmas goes before each year’s', thatChristmas, christmas, true],
    ['each year’s does not go before a dated one', christmas, thatChristmas, false],
    ['Christmas Eve goes before Christmas', { dates: [{ from: '12-24', until: '12-24' }] }, christmas, true],
    [
      'what reaches out of the season does not go before it',
      { dates: [{ from: '01-02', until: '01-10' }] },
      christmas,
      false,
    ],
    [
      'Christmas goes before the whole year, though it runs over its end',
      christmas,
      { dates: [{ from: '01-01', until: '12-31' }] },
      true,
    ],
    [
      'it does not go before a year without the last of it',
      christmas,
      { dates: [{ from: '01-01', until: '12-30' }] },
      false,
    ],
    ['the second call goes before any', second, {}, true],
    ['the third of a day goes before the second on', { nth: { each: 'day', from: 3, to: 3 } }, second, true],
    ['that of a week does not', { nth: { each: 'week', from: 3 } }, second, false],
    ['20 to 40 km lie within 10 to 30 miles', { distance: { unit: 'km', over: 20, upTo: 40 } }, miles, true],
    ['20 to 50 km do not', { distance: { unit: 'km', over: 20, upTo: 50 } }, miles, false],
  ])('%s', (_, one, other, first) => {
    expect(closer(one, other)).toBe(first);
  });

  it.each<[string, Selector, Selector, boolean]>([
    ['Christmas and summer never meet', christmas, summer, true],
    ['two blocks that share a day may', christmas, { dates: [{ from: '01-06', until: '02-01' }] }, false],
    [
      'a block that follows on the next day does not',
      christmas,
      { dates: [{ from: '01-07', until: '02-01' }] },
      true,
    ],
    [
      'a dated one and another year’s never meet',
      thatChristmas,
      { dates: [{ from: '2027-12-20', until: '2027-12-31' }] },
      true,
    ],
    [
      'three years in a row meet any season',
      { dates: [{ from: '2026-01-01', until: '2028-12-31' }] },
      summer,
      false,
    ],
    ['the first and the second of a day never meet', { nth: { each: 'day', to: 1 } }, second, true],
    ['the first of a week and the second of a day may', { nth: { each: 'week', to: 1 } }, second, false],
    ['two bands of distance never meet', miles, { distance: { unit: 'mile', over: 30 } }, true],
    ['illness and an emergency never meet', { reasons: ['illness'] }, { reasons: ['emergency'] }, true],
  ])('%s', (_, one, other, never) => {
    expect([apart(one, other), apart(other, one)]).toEqual([never, never]);
  });
});

describe('a clause says', () => {
  it.each<[string, Selector]>([
    ['all calls from 15 December until 6 January', christmas],
    [
      'all calls on 24 December or from 20 December 2026 until 2 January 2027',
      {
        dates: [
          { from: '12-24', until: '12-24' },
          { from: '2026-12-20', until: '2027-01-02' },
        ],
      },
    ],
    ['rehearsals on the day of a recital', { calls: ['rehearsal'], sameDayAs: ['recital'] }],
    ['classes in week 2 or more of the engagement', { calls: ['class'], weeks: { from: 2 } }],
    ['classes after a pause of up to 30 minutes', { calls: ['class'], pause: { to: 30 } }],
    [
      'juries (asked for from 2 February until 1 May)',
      { calls: ['jury'], askedOn: [{ from: '02-02', until: '05-01' }] },
    ],
    ['services from the second of each day on', { calls: ['service'], ...second }],
    [
      'lessons that are the 21st of the engagement',
      { calls: ['lesson'], nth: { each: 'engagement', from: 21, to: 21 } },
    ],
    ['lessons up to the third of each week', { calls: ['lesson'], nth: { each: 'week', to: 3 } }],
    [
      'recitals that end from 23:00 until 05:00',
      { calls: ['recital'], ends: { from: '23:00', until: '05:00' } },
    ],
    [
      'lessons for illness or an emergency with up to 23 hours of notice',
      { calls: ['lesson'], reasons: ['illness', 'emergency'], noticeHours: { to: 23 } },
    ],
    [
      'all calls (4 soloists or more; 5 calls or more in all; up to 600 minutes in all; journeys beyond 10 and up to 30 miles)',
      { sharers: { from: 4 }, callsInAll: { from: 5 }, minutesInAll: { to: 600 }, ...miles },
    ],
  ])('%s', (said, selector) => {
    expect(sayCalls(selector, english)).toBe(said);
  });
});

describe('a block of dates is refused', () => {
  it.each([
    ['that is no date', '13-40', '12-31', 'is not a date'],
    ['with a year at one end only', '2026-12-15', '01-06', 'has a year at one end only'],
    ['dated, that ends before it begins', '2026-12-15', '2026-01-06', 'ends before it begins'],
  ])('%s', (_, from, until, why) => {
    const clause = {
      id: 'hours',
      kind: 'hourly',
      for: { dates: [{ from, until }] },
      terms: { price: '60.00' },
    };
    expect(() => tariffOf([clause])).toThrow(why);
  });
});

it.each([
  ['where it begins', 30],
  ['nearer than it begins', 20],
])('a band of distance that ends %s is refused', (_, upTo) => {
  const distance = { unit: 'km' as const, over: 30, upTo };
  expect(() =>
    tariffOf([{ id: 'hours', kind: 'hourly', for: { distance }, terms: { price: '60.00' } }]),
  ).toThrow('ends no farther than it begins. Let it reach farther');
});
