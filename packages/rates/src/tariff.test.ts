// Reading a tariff: what is not one is refused in one clear sentence that points at what is wrong.

import { readDay } from '@colla/calendar';
import { currency, fromDecimal, toDecimal } from '@colla/money';
import { granted, type Refusal, refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { readTariff, sentencesOf, type WrittenClause, type WrittenTariff, withChoices } from './tariff.ts';

const hour: WrittenClause = {
  id: 'hour',
  kind: 'hourly',
  for: { calls: ['rehearsal'] },
  terms: { price: '60.00' },
};
const vat: WrittenClause = { id: 'vat', kind: 'tax', terms: { name: 'VAT', rate: 2000 } };

function written(
  clauses: readonly unknown[],
  head: Partial<Record<keyof WrittenTariff, unknown>> = {},
): unknown {
  return { name: 'Students', currency: 'GBP', version: 1, from: '2026-09-01', ...head, clauses };
}

function refusalOf(input: unknown): Refusal {
  const answer = readTariff(input);
  if (!refused(answer)) throw new Error('it was read');
  return answer;
}

function clause(kind: string, terms: Record<string, unknown>, also: object = {}): unknown {
  return { id: kind, kind, terms, ...also };
}

describe('a tariff', () => {
  it('reads amounts into minor units of its currency', () => {
    const [first] = granted(readTariff(written([hour]))).clauses;
    expect(first?.kind === 'hourly' && first.terms.price).toBe(6000n);
  });

  it('keeps what was written, and reads it again as the same tariff', () => {
    const tariff = granted(readTariff(written([hour, vat])));
    expect(granted(readTariff(JSON.parse(JSON.stringify(tariff.written)))).clauses).toEqual(tariff.clauses);
  });

  it('says each of its clauses', () => {
    expect(sentencesOf(granted(readTariff(written([hour, vat]))), 'en-GB')).toEqual([
      { clause: 'hour', sentence: 'Rehearsals are 60.00 an hour, charged in quarter hours.' },
      { clause: 'vat', sentence: 'VAT at 20\u00a0% is added.' },
    ]);
  });

  it('may have no clause yet', () => {
    expect(granted(readTariff(written([]))).clauses).toEqual([]);
  });
});

describe('what is no tariff is refused', () => {
  const step = (before: number) => ({ before, owes: { owes: 'nothing' } });
  const cases: [string, unknown, string, string][] = [
    [
      'without a name',
      written([], { name: ' ' }),
      '/name',
      'The tariff at “/name”: is empty; give the tariff a name.',
    ],
    [
      'with a field nobody knows',
      written([], { colour: 'red' } as object),
      '/colour',
      'The tariff at “/colour”: “colour” is not known here; remove it, or correct its name.',
    ],
    [
      'with a clause of an unknown kind',
      written([clause('barter', {})]),
      '/clauses/0/kind',
      '“barter” is not a kind of clause. The kinds are hourly, fixed, package, entitlement, supplement, highest, either, late-score, change, discount, docking, limit, travel, cost, split, payee, cancellation, deposit, payment, late-payment, tax.',
    ],
    [
      'with a clause named in capitals and blanks',
      written([{ ...hour, id: 'The Hour' }]),
      '/clauses/0/id',
      'The tariff at “/clauses/0/id”: is not a short name; use small letters, digits and hyphens.',
    ],
    [
      'with a parameter nobody knows',
      written([clause('hourly', { price: '60', colour: 'red' })]),
      '/clauses/0/terms/colour',
      'Clause “hourly” at “/terms/colour”: “colour” is not known here; remove it, or correct its name.',
    ],
    [
      'without a price',
      written([clause('hourly', {})]),
      '/clauses/0/terms/price',
      'Clause “hourly” at “/terms/price”: is missing. Give an amount, such as 45.00.',
    ],
    [
      'with a price written as a number',
      written([clause('hourly', { price: 60 })]),
      '/clauses/0/terms/price',
      'Clause “hourly” at “/terms/price”: is not written as text. Write the amount in quotation marks, such as "45.00".',
    ],
    [
      'with a price below zero',
      written([clause('hourly', { price: '-1.00' })]),
      '/clauses/0/terms/price',
      'Clause “hourly” at “/terms/price”: “-1.00” is below zero. A price is zero or more.',
    ],
    [
      'with a share above the whole',
      written([clause('tax', { name: 'VAT', rate: 12000 })]),
      '/clauses/0/terms/rate',
      'Clause “tax” at “/terms/rate”: 12000 is above the most, which is 10000.',
    ],
    [
      'with steps of no length',
      written([clause('hourly', { price: '60', increment: 0 })]),
      '/clauses/0/terms/increment',
      'Clause “hourly” at “/terms/increment”: 0 is below the least, which is 1.',
    ],
    [
      'with half a minute',
      written([clause('hourly', { price: '60', minimum: 30.5 })]),
      '/clauses/0/terms/minimum',
      'Clause “hourly” at “/terms/minimum”: 30.5 is not a whole number.',
    ],
    [
      'with a way of rounding that is none',
      written([clause('hourly', { price: '60', round: 'sideways' })]),
      '/clauses/0/terms/round',
      'Clause “hourly” at “/terms/round”: “sideways” is none of up, nearest, down.',
    ],
    [
      'with a sort of supplement that is none',
      written([clause('supplement', { what: 'Late', by: { as: 'favour' } })]),
      '/clauses/0/terms/by/as',
      'Clause “supplement” at “/terms/by/as”: “favour” is none of amount, share, time, multiple of the fee.',
    ],
    [
      'with a time of day that is none',
      written([
        clause('cancellation', {
          clock: 'clock',
          scale: [{ ...step(1), time: '25:00' }],
          otherwise: { owes: 'all' },
        }),
      ]),
      '/clauses/0/terms/scale/0/time',
      'Clause “cancellation” at “/terms/scale/0/time”: is not a time of day; write it as 20:00.',
    ],
    [
      'with a kind of call that is none',
      written([{ ...hour, for: { calls: ['gig'] } }]),
      '/clauses/0/for/calls/0',
      'The tariff at “/clauses/0/for/calls/0”: “gig” is none of rehearsal, lesson, coaching, dress rehearsal, recital, jury, exam, audition, competition round, recording, class, service, other.',
    ],
    [
      'with a condition along a line nobody knows',
      written([{ ...hour, for: { weather: ['rain'] } }]),
      '/clauses/0/for/weather',
      'The tariff at “/clauses/0/for/weather”: “weather” is not known here; remove it, or correct its name.',
    ],
  ];
  it.each(cases)('%s', (_, input, field, sentence) => {
    const refusal = refusalOf(input);
    expect([refusal.field, refusal.sentence]).toEqual([field, sentence]);
  });
});

describe('what the rooms below refuse is refused in their words', () => {
  const price = (text: string) => clause('hourly', { price: text });
  const decimals = (text: string, code: string) => fromDecimal(text, granted(currency(code)));
  const before = 'Clause “hourly” at “/terms/price”: ';

  it.each([
    ['a currency that is none', written([], { currency: 'QQQ' }), '/currency', '', currency('QQQ')],
    ['a day that is none', written([], { from: '2026-02-30' }), '/from', '', readDay('2026-02-30')],
    ['half a penny', written([price('60.005')]), '/clauses/0/terms/price', before, decimals('60.005', 'GBP')],
    [
      'half a yen',
      written([price('60.5')], { currency: 'JPY' }),
      '/clauses/0/terms/price',
      before,
      decimals('60.5', 'JPY'),
    ],
    [
      'words for a price',
      written([price('sixty')]),
      '/clauses/0/terms/price',
      before,
      decimals('sixty', 'GBP'),
    ],
  ])('%s', (_, input, field, before, below) => {
    const refusal = refusalOf(input);
    expect(refusal.field).toBe(field);
    expect(refused(below) && before + below.sentence).toBe(refusal.sentence);
  });
});

describe('clauses that contradict are refused', () => {
  const everyHour = { id: 'every-hour', kind: 'hourly', terms: { price: '50.00' } };
  const sundays = { id: 'sundays', kind: 'hourly', for: { days: ['sunday'] }, terms: { price: '90.00' } };
  const scale = (...steps: object[]) => ({ scale: steps, otherwise: { owes: 'all' } });
  const nothing = { owes: 'nothing' };

  const cases: [string, unknown[], string, string][] = [
    [
      'two called alike',
      [hour, { ...vat, id: 'hour' }],
      '/clauses/1/id',
      'Two clauses are called “hour”. Give one of them another short name.',
    ],
    [
      'two that price the same rehearsals',
      [
        hour,
        { ...everyHour, for: { calls: ['rehearsal', 'lesson'] }, kind: 'fixed', id: 'fee' },
        { ...hour, id: 'again' },
      ],
      '/clauses/2',
      'Clauses “hour” and “again” contradict: both put a price on the same calls. Let one of them ask for something more (a kind of call, a day, a level), or remove it.',
    ],
    [
      'rehearsals and Sundays, which meet on a Sunday rehearsal',
      [hour, sundays],
      '/clauses/1',
      'Clauses “hour” and “sundays” contradict: both put a price on the same calls. Let one of them ask for something more (a kind of call, a day, a level), or remove it.',
    ],
    [
      'two scales for the same calls',
      [clause('cancellation', scale()), { ...(clause('cancellation', scale()) as object), id: 'other' }],
      '/clauses/1',
      'Clauses “cancellation” and “other” contradict: both say what is owed when the same calls fall. Let one of them ask for something more (a kind of call, a day, a level), or remove it.',
    ],
    [
      'two taxes',
      [vat, { ...vat, id: 'gst' }],
      '/clauses/1',
      'Clauses “vat” and “gst” contradict: both are of the kind “Tax”, and “gst” would count twice. Let one of them ask for something more of the engagement (a level, a class of pianist, a circumstance), or remove it.',
    ],
    [
      'a tax on rehearsals only',
      [{ ...vat, for: { calls: ['rehearsal'] } }],
      '/clauses/0/for',
      'Clause “vat” is about the engagement as a whole and cannot be for some calls of it only. Leave out the kinds of call, names and days.',
    ],
    [
      'a price outside its band',
      [clause('fixed', { price: '9.99', band: { from: '10.00', to: '20.00' } })],
      '/clauses/0/terms',
      'Clause “fixed”: The price lies outside its band: choose one inside it, or widen the band.',
    ],
    [
      'a band that ends below its start',
      [clause('fixed', { price: '15.00', band: { from: '20.00', to: '10.00' } })],
      '/clauses/0/terms',
      'Clause “fixed”: The band ends below where it begins: exchange its two amounts.',
    ],
    [
      'a price beyond without time included',
      [clause('fixed', { price: '15.00', beyond: { price: '5.00' } })],
      '/clauses/0/terms',
      'Clause “fixed”: A price beyond needs the time that is included: say how many minutes the fee includes.',
    ],
    [
      'minutes forgiven that eat the step',
      [clause('hourly', { price: '60', increment: 15, grace: 15 })],
      '/clauses/0/terms',
      'Clause “hourly”: Forgiving 15 minutes of a 15-minute step would never begin it: forgive fewer.',
    ],
    [
      'minutes forgiven where only full steps count',
      [clause('hourly', { price: '60', round: 'down', grace: 5 })],
      '/clauses/0/terms',
      'Clause “hourly”: Minutes are forgiven only where a step begun counts: forgive none, or round up.',
    ],
    [
      'notice of exactly so many days',
      [
        clause('cancellation', {
          clock: 'days',
          exactly: 'too-late',
          ...scale({ before: 7, owes: nothing }),
        }),
      ],
      '/clauses/0/terms',
      'Clause “cancellation”: Whole days end at midnight, and have no exact instant: leave out what notice of exactly that is.',
    ],
    [
      'a scale that runs from short notice to long',
      [clause('cancellation', scale({ before: 24, owes: nothing }, { before: 48, owes: nothing }))],
      '/clauses/0/terms',
      'Clause “cancellation”: The scale must run from the longest notice to the shortest: 24 stands before 48.',
    ],
    [
      'notice by the clock without a time',
      [clause('cancellation', { clock: 'clock', ...scale({ before: 1, owes: nothing }) })],
      '/clauses/0/terms',
      'Clause “cancellation”: Notice by a time of day needs that time: give it as 20:00.',
    ],
    [
      'a time of day in a scale of hours',
      [clause('cancellation', scale({ before: 24, time: '20:00', owes: nothing }))],
      '/clauses/0/terms',
      'Clause “cancellation”: A time of day goes with notice by a time of day only: leave it out, or count notice by the clock.',
    ],
    [
      'a deposit kept where none is asked for',
      [clause('cancellation', scale({ before: 7, owes: { owes: 'deposit' } }))],
      '/clauses/0/terms',
      'Clause “cancellation” needs a clause of the kind “deposit” in this tariff. Add one, or change what this one says.',
    ],
    [
      'a supplement on a clause that is not there',
      [clause('supplement', { what: 'Late', by: { as: 'share', share: 1000 }, on: ['night'] })],
      '/clauses/0/terms',
      'Clause “supplement” speaks of a clause “night” that is not in this tariff. Add it, or remove the name.',
    ],
    [
      'a supplement on itself',
      [clause('supplement', { what: 'Late', by: { as: 'share', share: 1000 }, on: ['supplement'] })],
      '/clauses/0/terms',
      'Clause “supplement” speaks of itself, by way of what it names: there is no first one to work out. Remove one of the names.',
    ],
    [
      'a discount of more than all',
      [clause('discount', { what: 'Gift', by: { as: 'share', share: 10001 } })],
      '/clauses/0/terms',
      'Clause “discount”: It takes off more than the whole: give a share of 100 % or less.',
    ],
    [
      'a most for each week of everything',
      [clause('limit', { each: 'week', most: '100.00' })],
      '/clauses/0/terms',
      'Clause “limit”: What is for the whole engagement belongs to no one week: name the clauses that it holds.',
    ],
    [
      'a limit that limits nothing',
      [clause('limit', {})],
      '/clauses/0/terms',
      'Clause “limit”: It limits nothing: give the most, the least, or both, or what it is rounded to.',
    ],
    [
      'travel charged by nothing',
      [clause('travel', {})],
      '/clauses/0/terms',
      'Clause “travel”: Travel is charged by nothing: give a price for distance, for time, or a sum.',
    ],
    [
      'a split in which nobody pays',
      [clause('split', { among: [{ payer: 'school', parts: 0 }] })],
      '/clauses/0/terms',
      'Clause “split”: Nobody pays: give at least one payer a part.',
    ],
    [
      'a rate of tax for what is exempt',
      [clause('tax', { name: 'VAT', rate: 2000, code: 'E' })],
      '/clauses/0/terms',
      'Clause “tax”: A rate of 20 % goes with the standard category only: make it zero, or choose S.',
    ],
  ];
  it.each(cases)('%s', (_, clauses, field, sentence) => {
    const refusal = refusalOf(written(clauses));
    expect([refusal.field, refusal.sentence]).toEqual([field, sentence]);
  });

  it('but rehearsals on Sundays stand beside rehearsals: the closer goes first', () => {
    const closer = { ...sundays, for: { calls: ['rehearsal'], days: ['sunday'] } };
    expect(refused(readTariff(written([hour, closer])))).toBe(false);
  });

  it('and a rate for Saturdays stands beside one for Sundays', () => {
    const saturdays = { ...sundays, id: 'saturdays', for: { days: ['saturday'] } };
    expect(refused(readTariff(written([saturdays, sundays])))).toBe(false);
  });
});

describe('a price agreed within a band', () => {
  const banded = granted(
    readTariff(written([{ ...hour, terms: { price: '60.00', band: { from: '50.00', to: '75.00' } } }, vat])),
  );

  it('is the price from then on', () => {
    const chosen = granted(withChoices(banded, { hour: '72.50' })).clauses[0];
    expect(chosen?.kind === 'hourly' && toDecimal(chosen.terms.price, banded.currency)).toBe('72.50');
  });

  it.each([
    [
      'above the band',
      { hour: '75.01' },
      '/choices/hour',
      'Clause “hour”: The price lies outside its band: choose one inside it, or widen the band.',
    ],
    [
      'for a clause without a band',
      { vat: '10.00' },
      '/choices/vat',
      'Clause “vat” leaves no price to choose. Remove the choice, or give the clause a band.',
    ],
    [
      'for a clause that is not there',
      { night: '10.00' },
      '/choices/night',
      'Clause “night” leaves no price to choose. Remove the choice, or give the clause a band.',
    ],
    [
      'for a name with a stroke, which the pointer writes as ~1',
      { 'day/night': '10.00' },
      '/choices/day~1night',
      'Clause “day/night” leaves no price to choose. Remove the choice, or give the clause a band.',
    ],
  ])('is refused %s', (_, choices, field, sentence) => {
    const answer = withChoices(banded, choices as Record<string, string>);
    expect(refused(answer) && [answer.field, answer.sentence]).toEqual([field, sentence]);
  });
});
