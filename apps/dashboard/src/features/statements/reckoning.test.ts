// A statement is put before a reader payer by payer, and every line finds its why.

import { Temporal } from '@colla/calendar';
import { currency } from '@colla/money';
import { given, readTariff, sentencesOf, statement } from '@colla/rates';
import { granted } from '@colla/refusal';
import { showStatement } from '@colla/wire';
import { describe, expect, it } from 'vitest';
import { namedCalls, partsOf, type Reckoned, sentenceFor, uncharged, whenOf } from './reckoning.ts';

const pounds = granted(currency('GBP'));
const tariff = granted(
  readTariff({
    name: 'Class and exam',
    currency: 'GBP',
    version: 1,
    from: '2026-01-01',
    clauses: [
      { id: 'class', kind: 'fixed', for: { calls: ['class'] }, payer: 'school', terms: { price: '30.00' } },
      { id: 'exam', kind: 'fixed', for: { calls: ['exam'] }, payer: 'family', terms: { price: '80.00' } },
    ],
  }),
);
const priced = statement(
  given({ calls: ['class 60', 'exam 20', 'jury 20'] }, pounds),
  { tariff, locale: 'en' },
  Temporal.ZonedDateTime.from('2026-03-01T09:00[Europe/London]'),
);
const reckoned: Reckoned = {
  statement: showStatement(priced),
  sentences: sentencesOf(tariff, 'en'),
  callNames: { c000: 'Class', c001: 'Exam', c002: 'Jury' },
  payerNames: { school: 'Tarn School of Music' },
};

it('a class the school pays and an exam the family pays are two parts of 30.00 and 80.00', () => {
  expect(partsOf(reckoned).map(({ name, lines, total }) => [name, lines.length, total])).toEqual([
    ['Tarn School of Music', 1, '30.00'],
    ['family', 1, '80.00'],
  ]);
});

it('the exam’s line opens to its clause and names its call', () => {
  const line = partsOf(reckoned)[1]?.lines[0];
  expect(sentenceFor(line?.clause ?? '', reckoned)).toContain('80.00');
  expect(namedCalls(line?.calls ?? [], reckoned)).toEqual(['Exam']);
});

it('a line says when its call was, and does not say twice what it was', () => {
  const named = { ...reckoned, callNames: { c001: 'Exam, Tue 3 Mar' } };
  expect(whenOf({ what: 'Exam', calls: ['c001'] }, named)).toBe('Tue 3 Mar');
  expect(whenOf({ what: 'Late music', calls: ['c001'] }, named)).toBe('Exam, Tue 3 Mar');
});

it('a jury that no clause prices is named', () => {
  expect(namedCalls(reckoned.statement.unpriced, reckoned)).toEqual(['Jury']);
});

describe('journeys and costs', () => {
  const travelled = given({ calls: ['class 60'], legs: ['40 km'], costs: ['Score 12.00'] }, pounds);
  const travel = { id: 'travel', kind: 'travel', terms: { perUnit: '0.50' } } as const;
  const cost = { id: 'cost', kind: 'cost', terms: {} } as const;

  it('for which the tariff has no clause are said to be charged to nobody', () => {
    expect(unchargedUnder([])).toEqual(['journeys', 'costs']);
    expect(unchargedUnder([travel])).toEqual(['costs']);
    expect(unchargedUnder([travel, cost])).toEqual([]);
  });

  it('are passed over in silence where there are none', () => {
    expect(uncharged(reckoned)).toEqual([]);
  });

  function unchargedUnder(clauses: readonly (typeof travel | typeof cost)[]): string[] {
    const written = { name: 'Away', currency: 'GBP', version: 1, from: '2026-01-01' };
    const fixed = { id: 'class', kind: 'fixed', for: { calls: ['class'] }, terms: { price: '30.00' } };
    const under = granted(readTariff({ ...written, clauses: [fixed, ...clauses] }));
    const of = statement(travelled, { tariff: under, locale: 'en' }, priced.asOf);
    return uncharged({ ...reckoned, statement: showStatement(of), journeys: 1, costs: 1 });
  }
});
