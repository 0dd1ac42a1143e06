// What the terms of a clause say aloud, and which of them cannot stand together.

import { refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { tariffOf } from '../priced.ts';
import type { Selector } from '../selector.ts';
import { readTariff, sentencesOf, type WrittenClause } from '../tariff.ts';

const fee: WrittenClause = { id: 'fee', kind: 'fixed', terms: { price: '100.00' } };

describe('a clause says', () => {
  it.each<[string, string, object, Selector?]>([
    [
      'Travel is 0.45 a mile beyond 20 miles of each day.',
      'travel',
      { unit: 'mile', perUnit: '0.45', over: 20, each: 'day' },
    ],
    [
      'Travel is 15.00 for each journey beyond 10 and up to 30 km.',
      'travel',
      { flat: '15.00', over: 10, upTo: 30 },
    ],
    [
      'Travel is 0.60 a km up to 500 km of all journeys and 16.00 an hour under way beyond one hour of all journeys, charged in half hours.',
      'travel',
      { perUnit: '0.60', upTo: 500, perHour: '16.00', freeMinutes: 60, increment: 30, each: 'engagement' },
    ],
    [
      'The night named “Night” or “Hotel”: passed on as paid, each up to 95.00.',
      'cost',
      { what: 'The night', only: ['Night', 'Hotel'], most: '95.00' },
    ],
    [
      'Costs except “Fare”: 50\u00a0% is passed on.',
      'cost',
      { what: 'Costs', except: ['Fare'], share: 5000 },
    ],
    [
      'The agency is paid 15\u00a0% of what “fee” charges.',
      'payee',
      { payee: 'the agency', of: ['fee'], share: 1500 },
    ],
    [
      'A deposit of 25\u00a0% of what “fee” charges, at least 40.00, at most 200.00, is due 7 days after the agreement; it counts towards the final invoice.',
      'deposit',
      {
        of: { as: 'share', share: 2500, on: ['fee'], least: '40.00', most: '200.00' },
        due: [{ event: 'agreement', days: 7 }],
      },
    ],
    [
      'Payment: 30\u00a0% is due 7 days after the agreement, 30\u00a0% is due on the day of the first rehearsal, and the rest on the day of the principal call.',
      'payment',
      {
        due: [{ event: 'principal call', days: 0 }],
        stages: [
          { share: 3000, due: [{ event: 'agreement', days: 7 }] },
          { share: 3000, due: [{ event: 'rehearsal', days: 0 }] },
        ],
      },
    ],
    [
      'An invoice that is paid more than 7 days after it is due costs 5.00 more for each week begun, 40.00 at most.',
      'late-payment',
      { by: { as: 'sum', amount: '5.00', each: 'week', most: '40.00' }, grace: 7 },
    ],
    [
      'Moving calls: 2 changes are free, then 12.50, then 50\u00a0% of the fee and 12.50.',
      'change',
      { free: 2, after: [0, 5000], sum: '12.50' },
    ],
    [
      'What “fee” charges is at least 60.00 and rounded up to a multiple of 5.00 a month, also for a month without any between the first and the last.',
      'limit',
      { on: ['fee'], each: 'month', least: '60.00', rounded: { to: '5.00' }, through: true },
    ],
    [
      'Services are 150.00 each; from the second of a day to the third 100.00 for each one and from the fourth of a day on 80.00 for each one.',
      'fixed',
      {
        price: '150.00',
        within: 'day',
        further: [
          { after: 1, price: '100.00' },
          { after: 3, price: '80.00' },
        ],
      },
      { calls: ['service'] },
    ],
    [
      'Rehearsals are 20.00 and 10\u00a0% of what “fee” charges each.',
      'fixed',
      { price: '20.00', and: { share: 1000, of: ['fee'] } },
      { calls: ['rehearsal'] },
    ],
    [
      'Meals: 24.00 for each cost named “Night”.',
      'fixed',
      { price: '24.00', each: 'cost', named: ['Night'], what: 'Meals' },
    ],
    [
      'Preparation: 25.00 for each work among hard works of 11 minutes or more and 6 pages or more.',
      'fixed',
      {
        price: '25.00',
        each: 'work',
        what: 'Preparation',
        works: { difficulties: ['hard'], minutes: { from: 11 }, pages: { from: 6 } },
      },
    ],
    [
      'Overtime: time beyond the planned time of all calls is charged in half hours at 150\u00a0% of their fee for as much time, 5 minutes over are forgiven.',
      'supplement',
      { what: 'Overtime', by: { as: 'multiple of the fee', multiple: 15_000, increment: 30, grace: 5 } },
    ],
    [
      'Late: all calls are 10.00 an hour more from 22:00 until 06:00, beyond one hour of a week, charged in quarter hours.',
      'supplement',
      {
        what: 'Late',
        by: {
          as: 'time',
          price: '10.00',
          of: 'hours of the day',
          between: { from: '22:00', until: '06:00' },
          beyond: 60,
          each: 'week',
        },
      },
    ],
    [
      'Music that comes later than 10 days after the start of the term costs 20\u00a0% of the fee more for each work.',
      'late-score',
      {
        before: 'start of the term',
        side: 'after',
        steps: [{ days: 10, means: { as: 'share', share: 2000 } }],
        each: 'work',
      },
    ],
    [
      'Course: 400.00, which includes 10 lessons; what lies beyond is charged by the other clauses. What the pianist misses of it is given back in proportion.',
      'package',
      {
        price: '400.00',
        what: 'Course',
        includes: [{ of: { calls: ['lesson'] }, calls: 10 }],
        back: 'what the pianist misses',
      },
    ],
  ])('%s', (said, kind, terms, selector = {}) => {
    // What it names is for calls of its own, and so never in its way.
    const named = { ...fee, for: { calls: ['other' as const] } };
    const tariff = tariffOf([named, { id: 'it', kind, for: selector, terms: { ...terms } }]);
    expect(sentencesOf(tariff, 'en-GB').at(-1)?.sentence).toBe(said);
  });
});

describe('these cannot stand together', () => {
  const due = [{ event: 'invoice', days: 30 }];
  it.each<[string, object, string]>([
    [
      'travel',
      { perUnit: '1.00', over: 30, upTo: 30 },
      'Travel is charged up to where it begins: let it reach farther.',
    ],
    [
      'cost',
      { only: ['Fare'], except: ['Night'] },
      'Costs are named twice over: say which are passed on, or which are not.',
    ],
    [
      'cost',
      { share: 5000, handling: 1000 },
      'A part is passed on, and a share comes on top of it: leave one of them out.',
    ],
    [
      'deposit',
      { due, of: { as: 'share', share: 1, least: '9.00', most: '8.00' } },
      'The least deposit is more than the most: exchange the two amounts.',
    ],
    [
      'payment',
      { due, instalments: 3, stages: [{ share: 3000, due }] },
      'It is paid in monthly parts and in others: choose one of them.',
    ],
    [
      'payment',
      { due, stages: [{ share: 10_000, due }] },
      'The parts that are due before the rest leave no rest: let them be less than the whole.',
    ],
    [
      'limit',
      { most: '5.00', on: ['fee'], each: 'month', through: true },
      'Only the least of days, weeks and months can stand where there is none: say it so, or leave it out.',
    ],
    [
      'limit',
      { rounded: { to: '0.00' } },
      'It is rounded to a multiple of nothing: give an amount, such as 5.00.',
    ],
    [
      'fixed',
      { price: '1.00', each: 'engagement', further: [{ after: 1, price: '1.00' }] },
      'There is one fee for the engagement and none further: charge it for each call, day or work.',
    ],
    [
      'fixed',
      { price: '1.00', each: 'week', within: 'month' },
      'A week is no part of one month: count them anew for a longer time.',
    ],
    [
      'fixed',
      { price: '1.00', each: 'page', within: 'week' },
      'What is counted for each page is counted once: leave out for what it is counted anew.',
    ],
    [
      'fixed',
      { price: '1.00', each: 'call', through: true },
      'Only days, weeks and months lie between others: charge it for one of them, or leave out those without calls.',
    ],
    [
      'fixed',
      { price: '1.00', each: 'day', within: 'week', through: true, further: [{ after: 1, price: '1.00' }] },
      'Those without calls belong to no one of what is counted anew: count them for the engagement.',
    ],
    [
      'fixed',
      { price: '1.00', works: { minutes: { from: 5 } } },
      'Works are chosen, but something else is counted: charge it for each work, page or minute of music.',
    ],
    [
      'fixed',
      { price: '1.00', named: ['Night'] },
      'Costs are named, but something else is counted: charge it for each cost.',
    ],
    [
      'fixed',
      { price: '1.00', each: 'page', and: { share: 1, of: ['fee'] } },
      'A share of another price goes with calls, days or the engagement: leave it out for each page.',
    ],
    [
      'supplement',
      { what: 'Over', by: { as: 'time', price: '1.00', each: 'week' } },
      'The time of a week is reckoned together: say beyond how many minutes of it.',
    ],
    [
      'docking',
      { by: { as: 'amount', amount: '1.00' }, on: ['fee'] },
      'Only a share or a part is taken of what other clauses pay: choose one of them, or name no clauses.',
    ],
    [
      'late-score',
      {
        side: 'after',
        steps: [
          { days: 20, means: { as: 'may decline' } },
          { days: 10, means: { as: 'may decline' } },
        ],
      },
      'The steps must run from the earliest day to the latest: put the least number of days first.',
    ],
    [
      'either',
      { keep: 'lower', ways: [{}, {}] },
      'Two ways name no clause, and are one: name the clauses of one of them.',
    ],
  ])('%s %j', (kind, terms, sentence) => {
    const clauses = [
      { ...fee, for: { calls: ['other'] } },
      { id: 'it', kind, terms },
    ];
    const read = readTariff({ name: 'A', currency: 'GBP', version: 1, from: '2026-01-01', clauses });
    expect(refused(read) && read.sentence).toBe(`Clause “it”: ${sentence}`);
  });
});
