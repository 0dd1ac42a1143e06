// Peculiar terms of the trade, each said as a tariff and worked by hand. They are invented, after what is common
// practice: they are here to show that such things can be said, and come to what a person would reckon.

import { describe, expect, it } from 'vitest';
import type { Given } from './given.ts';
import { pounds, priced, tariffOf } from './priced.ts';
import { sentencesOf, type WrittenClause } from './tariff.ts';

/** A term of the trade: its clauses, an engagement, and what that comes to. */
interface Term {
  readonly clauses: readonly WrittenClause[];
  readonly given: Given;
  readonly total: string;
  readonly payers?: Readonly<Record<string, string>>;
}

const clause = (
  id: string,
  kind: string,
  terms: WrittenClause['terms'],
  also: Partial<WrittenClause> = {},
): WrittenClause => ({ id, kind, ...also, terms });
const hours = (price: string, terms: object = {}, also: Partial<WrittenClause> = {}) =>
  clause('hours', 'hourly', { price, ...terms }, also);
const sum = (id: string, amount: string, each: string, also: Partial<WrittenClause> = {}) =>
  clause(id, 'supplement', { what: id, by: { as: 'amount', amount, each } }, also);
const share = (id: string, of: number, on?: readonly string[], also: Partial<WrittenClause> = {}) =>
  clause(id, 'supplement', { what: id, by: { as: 'share', share: of }, ...(on ? { on } : {}) }, also);
const either = (keep: string, each: string, ...ways: (readonly string[])[]) =>
  clause('either', 'either', { keep, each, ways: ways.map((of) => ({ of })) });

function holds(terms: Readonly<Record<string, Term>>): void {
  it.each(Object.entries(terms))('%s', (_, { clauses, given, total, payers }) => {
    const bill = priced(clauses, given);
    expect(bill.unpriced).toEqual([]);
    expect(pounds(bill.total)).toBe(total);
    if (payers)
      expect(Object.fromEntries(bill.payers.map(({ payer, total }) => [payer, pounds(total)]))).toEqual(
        payers,
      );
    for (const { sentence } of sentencesOf(tariffOf(clauses), 'en-GB'))
      expect(sentence).toMatch(/^[A-Z(].+\.$/);
  });
}

describe('time', () => {
  holds({
    'a ballet class has a three-hour call, half an hour of rest after five, and double time from nine: 5.5 × 24 + 2 × 24':
      {
        clauses: [
          hours('24.00', { minimum: 180, rest: { minutes: 30, after: 300 } }),
          clause('late', 'supplement', {
            what: 'After nine',
            by: {
              as: 'time',
              price: '24.00',
              of: 'hours of the day',
              between: { from: '21:00', until: '06:00' },
            },
          }),
        ],
        given: { calls: ['class 360 at 17:00'] },
        total: '180.00',
      },
    'a school musical: the first ten hours at 30, the next ten at 25, what lies beyond at 20: 300 + 250 + 60':
      {
        clauses: [
          hours('30.00', {
            each: 'engagement',
            further: [
              { after: 600, price: '25.00' },
              { after: 1200, price: '20.00' },
            ],
          }),
        ],
        given: { calls: ['23 × rehearsal 60'] },
        total: '610.00',
      },
    'an opera house pays half days of four hours at 110, a day at 190, and 30 an hour beyond eight: 110, 190, 190 + 60':
      {
        clauses: [
          clause('half', 'hourly', { price: '110.00', per: 240, increment: 240, each: 'day' }),
          clause('day', 'fixed', { price: '190.00', each: 'day' }),
          either('lower', 'day', ['half'], ['day']),
          clause('over', 'supplement', {
            what: 'Beyond eight hours',
            by: { as: 'time', price: '30.00', beyond: 480, each: 'day' },
          }),
        ],
        given: {
          calls: [
            'rehearsal 180 on 2026-03-02',
            'rehearsal 180 on 2026-03-03 at 10:00',
            'rehearsal 150 on 2026-03-03 at 19:00',
            'rehearsal 360 on 2026-03-04 at 10:00',
            'rehearsal 240 on 2026-03-04 at 18:00',
          ],
        },
        total: '550.00',
      },
    'lessons of a month are added up and charged in half hours: 75 minutes and 20 are 90 and 30, at 36 an hour':
      {
        clauses: [hours('36.00', { each: 'month', increment: 30 })],
        given: { calls: ['3 × lesson 25 on 2026-03-02', 'lesson 20 on 2026-04-07'] },
        total: '72.00',
      },
    'ten hours a month are paid whether used or not: six hours, none, and twelve at 28': {
      clauses: [
        hours('28.00'),
        clause('retainer', 'limit', {
          what: 'Retainer',
          on: ['hours'],
          each: 'month',
          least: '280.00',
          through: true,
        }),
      ],
      given: { calls: ['3 × rehearsal 120 on 2026-09-07', '6 × rehearsal 120 on 2026-11-02'] },
      total: '896.00',
    },
    'a recording session of three hours is 180, overtime by started quarters at time and a half, music beyond 20 minutes 9 a minute: 180 + 45 + 27':
      {
        clauses: [
          clause('session', 'fixed', { price: '180.00' }),
          clause('over', 'supplement', {
            what: 'Overtime',
            by: { as: 'multiple of the fee', multiple: 15_000 },
            on: ['session'],
          }),
          clause('music', 'fixed', {
            price: '0.00',
            each: 'minute of music',
            what: 'Music',
            further: [{ after: 20, price: '9.00' }],
          }),
        ],
        given: { calls: ['recording 180 +20'], works: ['Sonata, 17 min', 'Elegy, 6 min'] },
        total: '252.00',
      },
    'a quarter of an hour of waiting is free, then each quarter begun is 12: of 40 minutes two': {
      clauses: [
        hours('40.00'),
        clause('waiting', 'supplement', {
          what: 'Waiting',
          by: { as: 'time', price: '12.00', per: 15, of: 'waiting', beyond: 15 },
        }),
      ],
      given: { calls: ['rehearsal 100 late 40'] },
      total: '64.00',
    },
    'overtime beyond 40 hours a week is time and a half whatever the work: 42 hours at 20, two of them 10 more':
      {
        clauses: [
          hours('20.00'),
          clause('over', 'supplement', {
            what: 'Beyond 40 hours',
            by: { as: 'time', price: '10.00', beyond: 2400, each: 'week' },
          }),
        ],
        given: { calls: ['7 × rehearsal 360'] },
        total: '860.00',
      },
    'a call of less than an hour counts as an hour in the day, not each: three of 15 minutes on one day': {
      clauses: [hours('44.00', { each: 'day', minimum: 60 })],
      given: { calls: ['3 × exam 15 on 2026-03-02'] },
      total: '44.00',
    },
  });
});

describe('seasons, days and places', () => {
  const services = clause('service', 'fixed', { price: '80.00' });
  holds({
    'a second service on one day is half: 90 + 45, and 90 the Sunday after': {
      clauses: [
        clause('service', 'fixed', { price: '90.00' }),
        clause(
          'second',
          'discount',
          { what: 'Second service', by: { as: 'share', share: 5000 } },
          { for: { nth: { each: 'day', from: 2 } } },
        ),
      ],
      given: {
        calls: [
          'service 60 on 2026-03-08 at 09:00',
          'service 60 on 2026-03-08 at 11:00',
          'service 60 on 2026-03-15',
        ],
      },
      total: '225.00',
    },
    'Christmas is half as much again, Christmas Eve and Easter Day double and not both: 80 + 120 + 160 + 160':
      {
        clauses: [
          services,
          share('christmas', 5000, undefined, { for: { dates: [{ from: '12-15', until: '01-06' }] } }),
          share('feast', 10_000, undefined, {
            for: {
              dates: [
                { from: '12-24', until: '12-24' },
                { from: '2027-03-28', until: '2027-03-28' },
              ],
            },
          }),
          clause('highest', 'highest', { of: ['christmas', 'feast'] }),
        ],
        given: {
          calls: [
            'service 60 on 2026-12-13',
            'service 60 on 2026-12-20',
            'service 60 on 2026-12-24',
            'service 60 on 2027-03-28',
          ],
        },
        total: '520.00',
      },
    'a taxi of 22 whenever the evening ends after a quarter past eleven: one of two': {
      clauses: [
        hours('50.00', { increment: 5 }),
        sum('taxi', '22.00', 'call', { for: { ends: { from: '23:15', until: '05:00' } } }),
      ],
      given: { calls: ['recital 120 on 2026-03-02 at 21:00', 'recital 150 on 2026-03-03 at 21:00'] },
      // 100 + 125 + 22
      total: '247.00',
    },
    'asked for within two days it is 40 % more, within a week 20 %': {
      clauses: [
        clause('fee', 'fixed', { price: '100.00' }),
        share('A week', 2000, undefined, { for: { daysAhead: { from: 2, to: 6 } } }),
        share('Two days', 4000, undefined, { for: { daysAhead: { to: 1 } } }),
      ].map((one, index) => ({ ...one, id: `c${index}` })),
      given: {
        askedAt: '2026-03-01T09:00',
        calls: ['recital 60 on 2026-03-02', 'recital 60 on 2026-03-05', 'recital 60 on 2026-03-08'],
      },
      total: '360.00',
    },
    'travel there and back in one day, 12 miles each way, is paid beyond 20 miles a day, and a train the next day is not':
      {
        clauses: [
          hours('30.00'),
          clause('way', 'travel', { unit: 'mile', perUnit: '0.45', over: 20, each: 'day' }),
        ],
        given: {
          calls: ['2 × rehearsal 60'],
          legs: ['12 mile on 2026-03-02', '12 mile on 2026-03-02', '18 mile on 2026-03-03'],
        },
        // 60.00 and 4 × 0.45
        total: '61.80',
      },
    'zones: up to 10 km nothing, up to 30 km 12, beyond that 0.60 a km from the door': {
      clauses: [
        clause('fee', 'fixed', { price: '100.00' }),
        clause('near', 'travel', { flat: '12.00', over: 10, upTo: 30 }),
        clause('far', 'travel', { perUnit: '0.60' }, { for: { distance: { unit: 'km', over: 30 } } }),
      ],
      given: { calls: ['recital 60'], legs: ['40 km'] },
      total: '124.00',
    },
    'beyond 100 miles a night is owed up to 95, and a day’s meals are 24: 300 + 95 + 24': {
      clauses: [
        clause('fee', 'fixed', { price: '300.00' }),
        clause('night', 'cost', { what: 'The night', only: ['Night'], most: '95.00' }),
        sum('meals', '24.00', 'day', { for: { distance: { unit: 'mile', over: 100 } } }),
      ],
      given: { calls: ['recital 60'], legs: ['140 mile'], costs: ['Night 130.00', 'Shoes 70.00'] },
      total: '419.00',
    },
    'travelling time is half the rate, by started half hours after the first hour: 100 minutes are one': {
      clauses: [
        hours('48.00'),
        clause('way', 'travel', { perHour: '24.00', freeMinutes: 60, increment: 30 }),
      ],
      given: { calls: ['rehearsal 60'], legs: ['80 km, 100 min'] },
      // 48 + 24 × 60/60, since the 40 minutes begin a second half hour
      total: '72.00',
    },
  });
});

describe('soloists and works', () => {
  holds({
    'the first player of a chamber group is 45, each further one 15: a trio': {
      clauses: [
        clause('exam', 'fixed', { price: '0.00' }),
        clause('player', 'fixed', {
          price: '45.00',
          each: 'soloist',
          further: [{ after: 1, price: '15.00' }],
        }),
      ],
      given: { calls: ['exam 20'], sharers: 3 },
      total: '75.00',
    },
    'four soloists or more share a recital at 30 each, fewer at 45': {
      clauses: [
        clause('recital', 'fixed', { price: '0.00' }),
        clause('each', 'fixed', { price: '45.00', each: 'soloist' }, { for: { sharers: { to: 3 } } }),
        clause('many', 'fixed', { price: '30.00', each: 'soloist' }, { for: { sharers: { from: 4 } } }),
      ],
      given: { calls: ['recital 90'], sharers: 5 },
      total: '150.00',
    },
    'a programme of up to 10 minutes is 40, up to 20 is 65, and each minute beyond 3 more: 24 minutes': {
      clauses: [
        clause('short', 'fixed', { price: '40.00' }, { for: { music: { to: 10 } } }),
        clause('long', 'fixed', { price: '65.00' }, { for: { music: { from: 11 } } }),
        clause('beyond', 'fixed', {
          price: '0.00',
          each: 'minute of music',
          further: [{ after: 20, price: '3.00' }],
        }),
      ],
      given: { calls: ['audition 40'], works: ['Sonata, 18 min', 'Song, 6 min'] },
      total: '77.00',
    },
    'a page of an orchestral reduction is 4.50, any other 2.00, the first 20 of these free': {
      clauses: [
        clause('fee', 'fixed', { price: '60.00' }),
        clause('reduction', 'fixed', {
          price: '4.50',
          each: 'page',
          what: 'Reduction',
          works: { difficulties: ['reduction'] },
        }),
        clause('pages', 'fixed', {
          price: '0.00',
          each: 'page',
          works: { difficulties: ['plain'] },
          further: [{ after: 20, price: '2.00' }],
        }),
      ],
      given: {
        calls: ['jury 20'],
        works: ['Concerto, 30 pages, difficulty reduction', 'Sonata, 24 pages, difficulty plain'],
      },
      // 60 + 30 × 4.50 + 4 × 2.00
      total: '203.00',
    },
    'each song to be transposed is 15, a long one 25': {
      clauses: [
        hours('40.00'),
        clause('short', 'fixed', {
          price: '15.00',
          each: 'work',
          works: { difficulties: ['transposed'], minutes: { to: 4 } },
        }),
        clause('long', 'fixed', {
          price: '25.00',
          each: 'work',
          works: { difficulties: ['transposed'], minutes: { from: 5 } },
        }),
      ],
      given: {
        calls: ['rehearsal 60'],
        works: ['Song, 3 min, difficulty transposed', 'Scena, 9 min, difficulty transposed', 'Hymn, 2 min'],
      },
      total: '80.00',
    },
    'a turner of pages is 35 an evening, and the broadcast a quarter of the fee, 150 at least: 400 + 35 + 150':
      {
        clauses: [
          clause('fee', 'fixed', { price: '400.00' }),
          sum('turner', '35.00', 'day', { for: { calls: ['recital'], circumstances: ['turner'] } }),
          share('broadcast', 2500, ['fee'], { for: { circumstances: ['broadcast'] } }),
          clause('least', 'limit', { on: ['broadcast'], least: '150.00' }),
        ],
        given: { calls: ['recital 90'], circumstances: ['turner', 'broadcast'] },
        total: '585.00',
      },
  });
});

describe('one price after another', () => {
  holds({
    'each rehearsal beyond the second is a tenth of the fee for the recital, two hours before it 20 more on the day':
      {
        clauses: [
          clause('recital', 'fixed', { price: '420.00' }, { for: { calls: ['recital'] } }),
          clause('two', 'fixed', { price: '0.00' }, { for: { calls: ['rehearsal'] } }),
          clause(
            'further',
            'fixed',
            { price: '0.00', and: { share: 1000, of: ['recital'] } },
            { for: { calls: ['rehearsal'], nth: { each: 'engagement', from: 3 } } },
          ),
          sum('on-the-day', '20.00', 'call', { for: { calls: ['rehearsal'], sameDayAs: ['recital'] } }),
        ],
        given: { calls: ['4 × rehearsal 60', 'recital 90 on 2026-03-05 at 19:00'] },
        // 420 + 2 × 42 + 20
        total: '524.00',
      },
    'less than eleven hours after the evening before, the morning is a quarter more': {
      clauses: [hours('40.00'), share('short-night', 2500, undefined, { for: { pause: { to: 659 } } })],
      given: { calls: ['recital 120 on 2026-03-07 at 21:00', 'class 60 on 2026-03-08 at 09:30'] },
      total: '130.00',
    },
    'the pension is 8 % and from the third week on 9 %: of two weeks at 500 each and one of 500': {
      clauses: [
        clause('week', 'fixed', { price: '500.00', each: 'week' }),
        clause(
          'pension',
          'supplement',
          { what: 'Pension', by: { as: 'share', share: 800 }, on: ['week'] },
          { for: { weeks: { to: 2 } } },
        ),
        clause(
          'pension-later',
          'supplement',
          { what: 'Pension', by: { as: 'share', share: 900 }, on: ['week'] },
          { for: { weeks: { from: 3 } } },
        ),
      ],
      given: { calls: ['3 × weekly rehearsal 240 on 2026-03-04'] },
      // 1,500 + 80 + 45
      total: '1625.00',
    },
    'music is wanted nine weeks before a recital and five before a jury, and costs 20 later': {
      clauses: [
        hours('30.00'),
        clause('recital', 'late-score', {
          before: 'recital',
          steps: [{ days: 63, means: { as: 'charge', amount: '20.00' } }],
        }),
        clause('jury', 'late-score', {
          before: 'jury',
          steps: [{ days: 35, means: { as: 'charge', amount: '20.00' } }],
        }),
      ],
      given: { calls: ['jury 60 on 2026-05-04'], works: ['Sonata, came 2026-03-31'] },
      // 4 May less 35 days is 30 March
      total: '50.00',
    },
    'every eleventh lesson of a course is free': {
      clauses: [
        hours('40.00'),
        clause(
          'eleventh',
          'discount',
          { what: 'Eleventh', by: { as: 'share', share: 10_000 } },
          {
            for: { nth: { each: 'engagement', from: 11, to: 11 } },
          },
        ),
      ],
      given: { calls: ['12 × lesson 60'] },
      total: '440.00',
    },
    'the first 100 miles of an engagement are 0.45, the rest 0.25': {
      clauses: [
        clause('near', 'travel', { unit: 'mile', perUnit: '0.45', upTo: 100, each: 'engagement' }),
        clause('far', 'travel', { unit: 'mile', perUnit: '0.25', over: 100, each: 'engagement' }),
        clause('fee', 'fixed', { price: '0.00' }),
      ],
      given: { calls: ['recital 60'], legs: ['60 mile', '60 mile'] },
      total: '50.00',
    },
    'a request after the closing day is 25 more, music later than the tenth day of term 10 for each week begun':
      {
        clauses: [
          clause('jury', 'fixed', { price: '55.00' }),
          sum('late-request', '25.00', 'engagement', {
            for: { askedOn: [{ from: '2026-09-21', until: '2026-12-31' }] },
          }),
          clause('music', 'late-score', {
            before: 'start of the term',
            side: 'after',
            steps: [{ days: 10, means: { as: 'charge', amount: '10.00', per: 'week' } }],
          }),
        ],
        given: {
          terms: ['autumn 2026-09-01 to 2026-12-18'],
          askedAt: '2026-09-21T08:00',
          calls: ['jury 20 on 2026-12-01'],
          works: ['Sonata, came 2026-09-25'],
        },
        // 14 days late: two weeks
        total: '100.00',
      },
  });
});

describe('two ways of charging', () => {
  holds({
    'the fare or the mileage, whichever is lower, and other costs as paid: 24 and 12, with 50 for the hour': {
      clauses: [
        hours('50.00'),
        clause('way', 'travel', { perUnit: '0.40' }),
        clause('fare', 'cost', { what: 'The fare', only: ['Fare'] }),
        clause('costs', 'cost', { except: ['Fare'] }),
        either('lower', 'engagement', ['way'], ['fare']),
      ],
      given: { calls: ['rehearsal 60'], legs: ['60 km'], costs: ['Fare 31.00', 'Score 12.00'] },
      total: '86.00',
    },
    'a quarter of the singer’s fee or 150, whichever is higher: of 480.00': {
      clauses: [
        clause('part', 'cost', { what: 'The singer’s fee', only: ['Singer’s fee'], share: 2500 }),
        clause('recital', 'fixed', { price: '0.00' }, { for: { calls: ['recital'] } }),
        sum('sum', '150.00', 'engagement'),
        either('higher', 'engagement', ['part'], ['sum']),
      ],
      given: { calls: ['recital 90'], costs: ['Singer’s fee 480.00'] },
      total: '150.00',
    },
    'the day at 250 or hours at 45, the higher of each day, and 900 a week at most: 270 + 250 + 405 + 250': {
      clauses: [
        hours('45.00'),
        clause('day', 'fixed', { price: '250.00', each: 'day' }),
        either('higher', 'day', ['hours'], ['day']),
        clause('week', 'limit', { on: ['hours', 'day'], each: 'week', most: '900.00' }),
      ],
      given: { calls: ['rehearsal 360', 'rehearsal 180', 'rehearsal 540', 'rehearsal 240'] },
      total: '900.00',
    },
    'of two reductions the better one: a tenth for the fifth engagement, or 15 % for five calls at once': {
      clauses: [
        hours('50.00'),
        clause(
          'fifth',
          'discount',
          { what: 'Fifth', by: { as: 'share', share: 1000 } },
          { for: { soFar: { from: 4 } } },
        ),
        clause(
          'five',
          'discount',
          { what: 'Five calls', by: { as: 'share', share: 1500 } },
          { for: { callsInAll: { from: 5 } } },
        ),
        either('lower', 'engagement', ['fifth'], ['five']),
      ],
      given: { calls: ['6 × lesson 60'], soFar: 4 },
      // 300.00 less 45.00
      total: '255.00',
    },
    'the deposit or half of the fee, whichever is higher, for what falls late: 120 of 240 where 100 were held':
      {
        clauses: [
          clause('fee', 'fixed', { price: '240.00' }),
          clause('deposit', 'deposit', {
            of: { as: 'amount', amount: '100.00' },
            due: [{ event: 'agreement', days: 7 }],
          }),
          clause('half', 'cancellation', { scale: [], otherwise: { owes: 'share', share: 5000 } }),
          clause('held', 'cancellation', { scale: [], otherwise: { owes: 'deposit' } }),
          either('higher', 'engagement', ['half'], ['held']),
        ],
        given: { calls: ['recital 60 on 2026-06-20'], fallen: [{ call: 0, at: '2026-06-18T10:00' }] },
        total: '120.00',
      },
  });
});

describe('what falls, and why', () => {
  const fee = clause('fee', 'fixed', { price: '60.00' });
  const otherwise = (id: string, owes: object, also: Partial<WrittenClause> = {}) =>
    clause(id, 'cancellation', { scale: [], otherwise: owes }, also);
  holds({
    'illness costs a quarter, force majeure nothing, anything else all: 15 + 0 + 60': {
      clauses: [
        fee,
        otherwise('any', { owes: 'all' }),
        otherwise('ill', { owes: 'share', share: 2500 }, { for: { reasons: ['illness'] } }),
        otherwise('storm', { owes: 'nothing' }, { for: { reasons: ['force majeure'] } }),
      ],
      given: {
        calls: ['3 × lesson 60'],
        fallen: [
          { call: 0, at: '2026-03-01T10:00', reason: 'illness' },
          { call: 1, at: '2026-03-01T10:00', reason: 'force majeure' },
          { call: 2, at: '2026-03-01T10:00' },
        ],
      },
      total: '75.00',
    },
    'in the high season a month’s notice is asked for, at other times two days': {
      clauses: [
        fee,
        clause('low', 'cancellation', {
          scale: [{ before: 48, owes: { owes: 'nothing' } }],
          otherwise: { owes: 'all' },
        }),
        clause(
          'high',
          'cancellation',
          {
            clock: 'days',
            scale: [{ before: 30, owes: { owes: 'nothing' } }],
            otherwise: { owes: 'share', share: 5000 },
          },
          { for: { dates: [{ from: '12-01', until: '01-06' }] } },
        ),
      ],
      given: {
        calls: ['service 60 on 2026-12-20', 'service 60 on 2026-06-20'],
        fallen: [
          { call: 0, at: '2026-12-01T10:00' },
          { call: 1, at: '2026-06-15T10:00' },
        ],
      },
      total: '30.00',
    },
    'a round that is held costs 40 until it is known whether it happens': {
      clauses: [
        clause('round', 'fixed', { price: '90.00' }),
        clause('hold', 'fixed', { price: '40.00', each: 'hold', what: 'Kept free' }),
      ],
      given: { calls: ['competition round 20', 'competition round 20, only if chosen'] },
      total: '130.00',
    },
    'moving a call is free once, then 10 each, and with less than a day’s notice no change is free': {
      clauses: [fee, clause('moves', 'change', { free: 1, noticeHours: 24, after: [0], sum: '10.00' })],
      given: {
        calls: ['2 × lesson 60'],
        moves: [
          { call: 0, at: '2026-02-25T12:00', was: '2026-02-26T10:00' },
          { call: 1, at: '2026-02-20T10:00', was: '2026-02-27T10:00' },
        ],
      },
      // The first word came in time and was free; the later one came 22 hours before.
      total: '130.00',
    },
  });
});

describe('who pays, and who is paid', () => {
  holds({
    'a deputy is paid 80 % of the fee by the payer, and the rest is mine': {
      clauses: [
        clause('fee', 'fixed', { price: '150.00' }),
        clause(
          'deputy',
          'payee',
          { payee: 'the deputy', of: ['fee'], share: 8000 },
          {
            for: { circumstances: ['deputy'] },
          },
        ),
      ],
      given: { calls: ['recital 60'], circumstances: ['deputy'] },
      total: '30.00',
    },
    'the school pays six hours at 35, the family what lies beyond at 40 and two fifths of the recital': {
      clauses: [
        clause(
          'covered',
          'entitlement',
          { minutes: 360, price: '35.00' },
          {
            for: { calls: ['rehearsal'] },
            payer: 'school',
          },
        ),
        clause('beyond', 'hourly', { price: '40.00' }, { for: { calls: ['rehearsal'] }, payer: 'family' }),
        clause('recital', 'fixed', { price: '125.00' }, { for: { calls: ['recital'] } }),
        clause('halves', 'split', {
          of: ['recital'],
          among: [
            { payer: 'school', parts: 3 },
            { payer: 'family', parts: 2 },
          ],
        }),
      ],
      given: { calls: ['4 × rehearsal 120', 'recital 60'] },
      total: '415.00',
      payers: { school: '285.00', family: '130.00' },
    },
    'the prize of 2,000 is shared, a tenth of it is the pianist’s, beside the fee of 180': {
      clauses: [
        clause('round', 'fixed', { price: '180.00' }),
        clause('prize', 'cost', { what: 'The prize', only: ['Prize'], share: 1000 }),
      ],
      given: { calls: ['competition round 30'], costs: ['Prize 2000.00'] },
      total: '380.00',
    },
    'an agency’s 15 % is paid by the payer beside the fee, on fees and not on travel': {
      clauses: [
        clause('fee', 'fixed', { price: '200.00' }),
        clause('way', 'travel', { perUnit: '0.50' }),
        clause('agency', 'supplement', { what: 'Agency', by: { as: 'share', share: 1500 }, on: ['fee'] }),
        clause('to', 'payee', { payee: 'the agency', of: ['agency'] }),
      ],
      given: { calls: ['recital 60'], legs: ['40 km'] },
      total: '220.00',
    },
    'a second child of the family has 10 % less, and an administration fee of 5 % is 4 at least': {
      clauses: [
        hours('60.00'),
        clause(
          'sibling',
          'discount',
          { what: 'Second child', by: { as: 'share', share: 1000 } },
          {
            for: { circumstances: ['second child'] },
          },
        ),
        clause('admin', 'supplement', {
          what: 'Administration',
          by: { as: 'share', share: 500 },
          on: ['hours'],
        }),
        clause('least', 'limit', { on: ['admin'], least: '4.00' }),
      ],
      given: { calls: ['lesson 60'], circumstances: ['second child'] },
      // 60 + 3, a tenth of both off: 56.70; the fee of 3.00 less 0.30 is made up to 4.00
      total: '58.00',
    },
  });
});

describe('pay and load', () => {
  const stipend = clause('stipend', 'fixed', { price: '2400.00', each: 'term', what: 'Stipend' });
  const autumn = ['autumn 2026-09-01 to 2026-12-18'];
  holds({
    'a stipend of 2,400 a term is docked by the part of its classes that were missed: 2 of 12, one of them forgiven':
      {
        clauses: [
          stipend,
          clause('docking', 'docking', {
            by: { as: 'part missed', each: 'term' },
            on: ['stipend'],
            excused: { reasons: ['illness'], atMost: 1, each: 'term' },
          }),
        ],
        given: {
          terms: autumn,
          calls: ['12 × weekly class 90 on 2026-09-07'],
          fallen: [
            { call: 2, at: '2026-09-20T10:00', by: 'pianist', reason: 'illness' },
            { call: 5, at: '2026-10-11T10:00', by: 'pianist', reason: 'illness' },
          ],
        },
        total: '2200.00',
      },
    'a call missed without a day’s notice is docked 75, with it 40, illness nothing': {
      clauses: [
        stipend,
        clause('early', 'docking', {
          by: { as: 'amount', amount: '40.00' },
          excused: { reasons: ['illness'] },
        }),
        clause(
          'late',
          'docking',
          { by: { as: 'amount', amount: '75.00' }, excused: { reasons: ['illness'] } },
          { for: { noticeHours: { to: 23 } } },
        ),
      ],
      given: {
        terms: autumn,
        calls: ['4 × weekly class 90 on 2026-09-07'],
        fallen: [
          { call: 0, by: 'pianist' },
          { call: 1, at: '2026-09-10T10:00', by: 'pianist' },
          { call: 2, at: '2026-09-21T08:00', by: 'pianist', reason: 'illness' },
        ],
      },
      total: '2285.00',
    },
    'a répétiteur is paid by the week, and what lies beyond 36 hours by the hour: 38 hours': {
      clauses: [
        clause('week', 'fixed', { price: '720.00', each: 'week' }),
        clause('over', 'supplement', {
          what: 'Beyond 36 hours',
          by: { as: 'time', price: '27.00', beyond: 2160, each: 'week' },
        }),
      ],
      given: { calls: ['4 × rehearsal 570'] },
      total: '774.00',
    },
    'rehearsals count once, a recital as three hours, and an hour of preparation goes with each four of rehearsal':
      {
        clauses: [
          clause('rehearsal', 'hourly', { price: '1.00', increment: 1 }, { for: { calls: ['rehearsal'] } }),
          clause('recital', 'fixed', { price: '3.00' }, { for: { calls: ['recital'] } }),
          share('preparation', 2500, ['rehearsal']),
        ],
        given: { calls: ['4 × rehearsal 120', 'recital 60'] },
        // 8 + 2 + 3
        total: '13.00',
      },
    'twenty hours or more booked at once are all at 32, fewer at 38': {
      clauses: [
        hours('38.00'),
        clause('many', 'hourly', { price: '32.00' }, { for: { minutesInAll: { from: 1200 } } }),
      ],
      given: { calls: ['10 × class 120'] },
      total: '640.00',
    },
  });
});

describe('keeping to what was agreed', () => {
  const rehearsals = clause('rehearsals', 'fixed', { price: '50.00' }, { for: { calls: ['rehearsal'] } });
  const bonus = sum('kept', '75.00', 'engagement', { for: { absences: { to: 0 } } });
  const cancelling = clause('notice', 'cancellation', { scale: [], otherwise: { owes: 'nothing' } });
  const third = clause(
    'third',
    'cancellation',
    { scale: [], otherwise: { owes: 'share', share: 5000 } },
    { for: { cancellations: { from: 3 } } },
  );
  const fall = (call: number, by: 'payer' | 'pianist') => ({ call, at: '2026-03-01T10:00', by });
  holds({
    'a pianist who misses nothing has 75 on top': {
      clauses: [rehearsals, bonus],
      given: { calls: ['3 × rehearsal 60'] },
      total: '225.00',
    },
    'one who missed a call has not, nor is the call paid': {
      clauses: [rehearsals, bonus],
      given: { calls: ['3 × rehearsal 60'], fallen: [fall(1, 'pianist')] },
      total: '100.00',
    },
    'two calls may be cancelled for nothing; where it is three, each of them costs half': {
      clauses: [rehearsals, cancelling, third],
      given: { calls: ['4 × rehearsal 60'], fallen: [fall(0, 'payer'), fall(1, 'payer'), fall(2, 'payer')] },
      total: '125.00',
    },
  });
});

describe('when it is paid', () => {
  it('a third at the agreement, a third at the first rehearsal, the rest on the day: 400.01 in three', () => {
    const { payment } = priced(
      [
        clause('fee', 'fixed', { price: '400.01', each: 'engagement' }),
        clause('due', 'payment', {
          due: [{ event: 'principal call', days: 0 }],
          stages: [
            { share: 3333, due: [{ event: 'agreement', days: 0 }] },
            { share: 3333, due: [{ event: 'rehearsal', days: 0 }] },
          ],
        }),
      ],
      { calls: ['rehearsal 60', 'recital 60'] },
    );
    // 33.33 % of 400.01 is 133.323…, the rest of 33.34 % 133.363…: the missing penny goes to the largest remainder.
    expect(payment?.instalments.map(({ amount, due }) => [pounds(amount), due?.[0]?.event])).toEqual([
      ['133.32', 'agreement'],
      ['133.32', 'rehearsal'],
      ['133.37', 'principal call'],
    ]);
  });

  it('paid within ten days of the invoice it is 2 % less, and that is said', () => {
    const clauses = [
      clause('due', 'payment', {
        due: [{ event: 'invoice', days: 30 }],
        early: { share: 200, until: [{ event: 'invoice', days: 10 }] },
      }),
    ];
    expect(sentencesOf(tariffOf(clauses), 'en-GB')[0]?.sentence).toBe(
      'Payment is due 30 days after the invoice. Paid no later than 10 days after the invoice, it is 2\u00a0% less.',
    );
  });
});
