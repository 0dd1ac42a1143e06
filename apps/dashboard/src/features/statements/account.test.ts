// Hours covered have an account of their own that can be read aloud.

import { Temporal } from '@colla/calendar';
import { currency } from '@colla/money';
import { given, readTariff, sentencesOf, statement } from '@colla/rates';
import { granted } from '@colla/refusal';
import { showStatement } from '@colla/wire';
import { expect, it } from 'vitest';
import { coveredText, grantName, grantSays, usedOf, usedShare } from './account.ts';
import type { Reckoned } from './reckoning.ts';

const pounds = granted(currency('GBP'));
const clauses = [
  { id: 'hours', kind: 'hourly', terms: { price: '40.00' } },
  {
    id: 'covered',
    kind: 'entitlement',
    payer: 'school',
    terms: { minutes: 60, each: 'week', price: '30.00' },
  },
];
const tariff = granted(readTariff({ name: 'Any', currency: 'GBP', version: 1, from: '2026-01-01', clauses }));
// An hour each week: 45 minutes of the first are used, of the second half an hour and what is left of it.
const facts = given(
  {
    calls: ['lesson 45 on 2026-03-02', 'lesson 30 on 2026-03-09', 'lesson 45 on 2026-03-11'],
  },
  pounds,
);
const asOf = Temporal.ZonedDateTime.from('2026-03-31T09:00[Europe/London]');
const of: Reckoned = {
  statement: showStatement(statement(facts, { tariff, locale: 'en-GB' }, asOf)),
  sentences: sentencesOf(tariff, 'en-GB'),
  callNames: {},
  payerNames: {},
};

it('says week by week what was granted and used, and what each lesson drew', () => {
  const [drawn] = of.statement.entitlements;
  if (!drawn) throw new Error('nothing is covered');
  const [first, second] = drawn.grants;
  if (!first || !second) throw new Error('two weeks are covered');
  expect(grantName(first)).toBe('The week of 2 March 2026');
  expect([usedOf(first), usedOf(second)]).toEqual(['0.75 of 1.00 h used', '1.00 of 1.00 h used']);
  expect(grantSays(second).filter((sentence) => sentence.startsWith('Lesson'))).toHaveLength(2);
  const text = coveredText(drawn, of);
  expect(text).toContain('Covered: 2.00 h. Used: 1.75 h. Left: 0.00 h. Lapsed: 0.25 h.');
  expect(text).toContain('The week of 9 March 2026: 1.00 of 1.00 h used.');
});

it('seven and a half of thirty hours are a quarter of the bar', () => {
  expect(usedShare({ granted: 1800, used: 450 })).toBe(25);
  expect(usedShare({ granted: 0, used: 0 })).toBe(0);
});

it('an engagement that is one occasion has an account without a name', () => {
  expect(grantName({})).toBe('The account');
});
