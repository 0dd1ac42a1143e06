// What is owed when a call falls, by how much notice was given on the clock of the place.

import { describe, expect, it } from 'vitest';
import type { Given } from '../given.ts';
import { pounds, priced, tariffOf } from '../priced.ts';
import { readTariff, sentencesOf, type WrittenClause } from '../tariff.ts';

const hours: WrittenClause = { id: 'hours', kind: 'hourly', terms: { price: '40.00' } };
const notice = (terms: object): WrittenClause => ({
  id: 'notice',
  kind: 'cancellation',
  terms: { ...terms },
});
const nothing = { owes: 'nothing' };
const all = { owes: 'all' };
const half = { owes: 'share', share: 5000 };
const dayBefore = { scale: [{ before: 24, owes: nothing }], otherwise: all };

const total = (clauses: WrittenClause[], facts: Given) => pounds(priced(clauses, facts).total);

describe('a call that falls', () => {
  const call = 'rehearsal 60 on 2026-03-04 at 14:00';
  const cancelled = (at: string, terms: object, more: Partial<NonNullable<Given['fallen']>[number]> = {}) =>
    total([hours, notice(terms)], { calls: [call], fallen: [{ call: 0, at, ...more }] });

  it.each([
    ['a minute more than 24 hours before', '2026-03-03T13:59', 'in-time', '0.00'],
    ['at exactly 24 hours, in time by the terms', '2026-03-03T14:00', 'in-time', '0.00'],
    ['at exactly 24 hours, too late by the terms', '2026-03-03T14:00', 'too-late', '40.00'],
    ['a minute less than 24 hours before', '2026-03-03T14:01', 'in-time', '40.00'],
  ])('%s', (_, at, exactly, owed) => {
    expect(cancelled(at, { ...dayBefore, exactly })).toBe(owed);
  });

  it('owes nothing where the tariff says nothing of cancelling, and is named as a gap', () => {
    const { total, unpriced } = priced([hours], {
      calls: [call],
      fallen: [{ call: 0, at: '2026-03-04T13:59' }],
    });
    expect([pounds(total), unpriced]).toEqual(['0.00', ['c000']]);
  });

  it('by the pianist is no gap where the tariff says nothing of cancelling', () => {
    const { unpriced } = priced([hours], {
      calls: [call],
      fallen: [{ call: 0, at: '2026-03-04T13:59', by: 'pianist' }],
    });
    expect(unpriced).toEqual([]);
  });

  it('through the pianist’s own absence costs the payer nothing, however late', () => {
    expect(cancelled('2026-03-04T13:59', dayBefore, { by: 'pianist' })).toBe('0.00');
  });

  it('without a word owes what a no-show owes', () => {
    const terms = { scale: [], otherwise: half, noShow: all };
    expect(total([hours, notice(terms)], { calls: [call], fallen: [{ call: 0 }] })).toBe('40.00');
  });

  it('without a word owes what is owed at the latest, where nothing is said of no-shows', () => {
    expect(
      total([hours, notice(dayBefore)], { calls: [call], fallen: [{ call: 0, reason: 'forgotten' }] }),
    ).toBe('40.00');
  });

  it('says why it owes what it owes', () => {
    const { fallen } = priced(
      [
        hours,
        notice({
          scale: [
            { before: 48, owes: nothing },
            { before: 24, owes: half },
          ],
          otherwise: all,
        }),
      ],
      {
        calls: [call],
        fallen: [{ call: 0, at: '2026-03-03T08:00' }],
      },
    );
    expect(fallen).toEqual([
      { call: 'c000', clause: 'notice', owes: 'share', why: 'cancelled 30 h before the rehearsal' },
    ]);
  });

  it('says a notice of a week in days, and of a second less than 48 hours no 48 hours', () => {
    // 4 March at 14:00 less 7 days and 15 hours is 24 February at 23:00.
    const why = (at: string) => {
      const scale = [{ before: 48, owes: nothing }];
      const facts = { calls: [call], fallen: [{ call: 0, at }] };
      return priced([hours, notice({ scale, otherwise: half })], facts).fallen.map(({ why }) => why);
    };
    expect(why('2026-02-24T23:00')).toEqual(['cancelled 7 days 15 h before the rehearsal']);
    expect(why('2026-03-02T14:00')).toEqual(['cancelled 48 h before the rehearsal']);
    expect(why('2026-03-02T14:00:01')).toEqual(['cancelled 47.9 h before the rehearsal']);
  });

  it('of the whole says before what its notice runs out', () => {
    const steps = [
      { before: 28, owes: nothing },
      { before: 14, owes: half },
    ];
    const terms = { of: 'engagement', clock: 'days', scale: steps, otherwise: all };
    expect(sentencesOf(tariffOf([notice(terms)]), 'en-GB')[0]?.sentence).toBe(
      'Cancelling the engagement costs nothing until 28 days before the principal call, 50\u00a0% of it until 14 days before it, and all of it later. What the pianist cancels costs nothing.',
    );
  });

  it('in an emergency is forgiven once and charged the second time', () => {
    const terms = { ...dayBefore, excused: { reasons: ['emergency'], atMost: 1 } };
    const facts: Given = {
      calls: ['2 × weekly lesson 60 on 2026-03-04 at 10:00'],
      fallen: [
        { call: 0, at: '2026-03-04T08:00', reason: 'emergency' },
        { call: 1, at: '2026-03-11T08:00', reason: 'emergency' },
      ],
    };
    const { fallen, total } = priced([hours, notice(terms)], facts);
    expect([fallen.map(({ why }) => why), pounds(total)]).toEqual([
      ['forgiven: emergency', 'cancelled 2 h before the lesson'],
      '40.00',
    ]);
  });

  it('leaves costs that were spent and journeys that were made to be paid', () => {
    const clauses = [hours, notice(dayBefore), { id: 'costs', kind: 'cost', terms: {} }];
    const facts: Given = {
      calls: [call],
      fallen: [{ call: 0, at: '2026-03-01T08:00' }],
      costs: ['Fare 12.80'],
    };
    expect(total(clauses, facts)).toBe('12.80');
  });

  it('with the recital is reckoned by the notice of the recital, where the whole is reckoned', () => {
    // Cancelled 30 hours before the rehearsal but 54 before the recital: 48 hours are kept for both.
    const terms = { scale: [{ before: 48, owes: nothing }], otherwise: all };
    const facts: Given = {
      calls: ['rehearsal 60 on 2026-03-04 at 14:00', 'recital 60 on 2026-03-05 at 14:00'],
      fallen: [
        { call: 0, at: '2026-03-03T08:00' },
        { call: 1, at: '2026-03-03T08:00' },
      ],
    };
    expect(total([hours, notice({ ...terms, of: 'engagement' })], facts)).toBe('0.00');
    expect(total([hours, notice(terms)], facts)).toBe('40.00');
  });
});

describe('notice on the clock of the place', () => {
  const cancelled = (
    call: string,
    at: string,
    terms: object,
    zone = 'Europe/London',
    holidays: string[] = [],
  ) => total([hours, notice(terms)], { zone, holidays, calls: [call], fallen: [{ call: 0, at }] });
  const byEight = { clock: 'clock', scale: [{ before: 1, time: '20:00', owes: nothing }], otherwise: all };

  // Clocks in London go forward on 29 March 2026 at 01:00 and back on 25 October 2026 at 02:00.
  it.each([
    [
      'by 20:00 on Saturday, though the night has 23 hours',
      '2026-03-29',
      '2026-03-28T20:00',
      byEight,
      '0.00',
    ],
    ['a minute after 20:00 on that Saturday', '2026-03-29', '2026-03-28T20:01', byEight, '40.00'],
    [
      'by 20:00 on Saturday, though the night has 25 hours',
      '2026-10-25',
      '2026-10-24T20:00',
      byEight,
      '0.00',
    ],
    [
      '24 hours before Sunday at 10:00 are 09:00 when clocks go forward',
      '2026-03-29',
      '2026-03-28T09:00',
      dayBefore,
      '0.00',
    ],
    ['and 09:01 is then too late', '2026-03-29', '2026-03-28T09:01', dayBefore, '40.00'],
    [
      '24 hours before Sunday at 10:00 are 11:00 when clocks go back',
      '2026-10-25',
      '2026-10-24T11:00',
      dayBefore,
      '0.00',
    ],
    ['and 11:01 is then too late', '2026-10-25', '2026-10-24T11:01', dayBefore, '40.00'],
  ])('%s', (_, day, at, terms, owed) => {
    expect(cancelled(`rehearsal 60 on ${day} at 10:00`, at, terms)).toBe(owed);
  });

  const sevenDays = { clock: 'days', scale: [{ before: 7, owes: nothing }], otherwise: all };
  const twoWorkingDays = { clock: 'working-days', scale: [{ before: 2, owes: nothing }], otherwise: all };
  it.each([
    ['seven days before counts the whole day', '2026-03-20', '2026-03-13T23:59', sevenDays, '0.00'],
    ['six days before is too late at midnight', '2026-03-20', '2026-03-14T00:00', sevenDays, '40.00'],
    [
      'two working days before a Monday is the Thursday',
      '2026-03-09',
      '2026-03-05T23:59',
      twoWorkingDays,
      '0.00',
    ],
    ['and the Friday is too late', '2026-03-09', '2026-03-06T09:00', twoWorkingDays, '40.00'],
  ])('%s', (_, day, at, terms, owed) => {
    expect(cancelled(`rehearsal 60 on ${day} at 10:00`, at, terms)).toBe(owed);
  });

  it('a holiday is no working day: with the Friday free, the Wednesday is the last in time', () => {
    const call = 'rehearsal 60 on 2026-03-09 at 10:00';
    expect(cancelled(call, '2026-03-05T09:00', twoWorkingDays, 'Europe/London', ['2026-03-06'])).toBe(
      '40.00',
    );
    expect(cancelled(call, '2026-03-04T23:59', twoWorkingDays, 'Europe/London', ['2026-03-06'])).toBe('0.00');
  });
});

describe('what cancelling now would cost', () => {
  const scale = {
    scale: [
      { before: 72, owes: nothing },
      { before: 24, owes: half },
    ],
    otherwise: all,
  };
  const facts: Given = {
    calls: ['rehearsal 60 on 2026-06-10 at 10:00', 'recital 90 on 2026-06-20 at 19:00, agreed'],
  };
  const clauses = [hours, notice(scale)];
  const at = (asOf: string) => {
    const cost = priced(clauses, facts, `${asOf}[Europe/London]`).ifCancelled;
    return cost && pounds(cost.total);
  };

  // The rehearsal is played and stays: 40.00. The recital is an hour and a half: 60.00.
  it.each([
    ['a week before, nothing but what is played', '2026-06-13T12:00', '40.00'],
    ['at exactly 72 hours, still nothing', '2026-06-17T19:00', '40.00'],
    ['two days before, half of the recital', '2026-06-18T19:00', '70.00'],
    ['an hour before, all of it', '2026-06-20T18:00', '100.00'],
  ])('%s', (_, asOf, cost) => {
    expect(at(asOf)).toBe(cost);
  });

  it('is not asked once the recital has begun', () => {
    expect(at('2026-06-20T19:00')).toBeUndefined();
  });

  it('is not asked of an offer', () => {
    expect(
      priced(clauses, { ...facts, offered: true }, '2026-06-01T12:00[Europe/London]').ifCancelled,
    ).toBeUndefined();
  });

  it('changes nothing of what the engagement costs', () => {
    expect(pounds(priced(clauses, facts, '2026-06-18T19:00[Europe/London]').total)).toBe('100.00');
  });
});

describe('a scale says of word at exactly the limit', () => {
  const said = (terms: object) => sentencesOf(tariffOf([notice(terms)]), 'en-GB')[0]?.sentence;

  it.each([
    ['that it is in time', dayBefore, 'Word at exactly the limit is in time.'],
    ['that it is too late', { ...dayBefore, exactly: 'too-late' }, 'Word at exactly the limit is too late.'],
  ])('%s', (_, terms, words) => {
    expect(said(terms)).toContain(words);
  });

  it.each([
    ['days', { ...dayBefore, clock: 'days' }],
    ['working days', { ...dayBefore, clock: 'working-days' }],
    ['nothing but one sum at any time', { scale: [], otherwise: all }],
  ])('nothing where it counts %s', (_, terms) => {
    expect(said(terms)).not.toContain('exactly');
  });
});

describe('a deposit that is kept where everything falls', () => {
  const free = { scale: [{ before: 24, owes: nothing }], otherwise: all };
  const fee: WrittenClause = { id: 'fee', kind: 'fixed', terms: { price: '100.00' } };
  const deposit = (more: object = {}, selector: object = {}): WrittenClause => ({
    id: 'deposit',
    kind: 'deposit',
    for: selector,
    terms: { of: { as: 'amount', amount: '60.00' }, due: [{ event: 'agreement', days: 3 }], ...more },
  });
  const both: Given = {
    calls: ['rehearsal 60 on 2026-06-19', 'recital 60 on 2026-06-20'],
    fallen: [
      { call: 0, at: '2026-06-05T12:00' },
      { call: 1, at: '2026-06-05T12:00' },
    ],
  };

  it('is made up to once, though two clauses judge the calls and one of them keeps it', () => {
    const recitals: WrittenClause = {
      id: 'recitals',
      kind: 'cancellation',
      for: { calls: ['recital'] },
      terms: { ...free, keepsDeposit: true },
    };
    expect(total([fee, deposit(), recitals, notice(free)], both)).toBe('60.00');
    expect(total([fee, deposit(), notice(free), recitals], both)).toBe('60.00');
  });

  it('is not kept where word came while it is given back', () => {
    const refundable = (days: number) => ({ refundable: [{ event: 'principal call', days }] });
    const keeps = notice({ ...free, keepsDeposit: true });
    // word on 5 June: the recital on the 20th is 15 days off
    expect(total([fee, deposit(refundable(-15)), keeps], both)).toBe('0.00');
    expect(total([fee, deposit(refundable(-16)), keeps], both)).toBe('60.00');
  });

  it('is refused where no engagement has both the deposit and the calls that fall', () => {
    const students = deposit({}, { study: ['student'] });
    const majors = { ...notice({ ...free, keepsDeposit: true }), for: { study: ['major'] } };
    const answer = readTariff({
      name: 'Apart',
      currency: 'GBP',
      version: 1,
      from: '2026-01-01',
      clauses: [fee, students, majors],
    });
    expect(answer).toMatchObject({
      code: 'rates/contradiction',
      sentence:
        'Clause “notice” speaks of the deposit, and “deposit” is never for the same engagements. Let the two meet, or change what “notice” says.',
      field: '/clauses/2/for',
    });
  });
});
