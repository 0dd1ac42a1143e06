// A new version says what sets it apart from the one before.

import { currency } from '@colla/money';
import { readTariff, type WrittenClause } from '@colla/rates';
import { granted } from '@colla/refusal';
import { expect, it } from 'vitest';
import { aboveBy, changesBetween } from './changes.ts';
import { startingExamples } from './example.ts';
import { priceExample } from './example-priced.ts';

const pounds = granted(currency('GBP'));
const reader = { currency: pounds, locale: 'en-GB', zone: 'Europe/London' };

function tariff(version: number, clauses: readonly WrittenClause[]) {
  return granted(readTariff({ name: 'Pupils', currency: 'GBP', version, from: '2026-01-01', clauses }));
}

const exam = { id: 'exam', kind: 'fixed', for: { calls: ['exam'] as const }, terms: { price: '60.00' } };
const lesson = {
  id: 'lesson',
  kind: 'hourly',
  for: { calls: ['lesson'] as const },
  terms: { price: '40.00' },
};

it('an exam that became dearer, a jury that is new and a lesson that has gone are three changes', () => {
  const jury = { id: 'jury', kind: 'fixed', for: { calls: ['jury'] as const }, terms: { price: '50.00' } };
  const before = tariff(1, [exam, lesson]);
  const now = tariff(2, [{ ...exam, terms: { price: '66.00' } }, jury]);
  expect(changesBetween(before, now, 'en-GB')).toEqual([
    { clause: 'exam', how: 'changed', was: 'Exams are 60.00 each.', is: 'Exams are 66.00 each.' },
    { clause: 'jury', how: 'added', is: 'Juries are 50.00 each.' },
    expect.objectContaining({ clause: 'lesson', how: 'removed' }),
  ]);
});

it('an exam that the school pays from now on is a change, though its price stays', () => {
  const [change] = changesBetween(tariff(1, [exam]), tariff(2, [{ ...exam, payer: 'school' }]), 'en-GB');
  expect(change?.is).toBe('Exams are 60.00 each. Paid by the school.');
});

it('60.00 after 66.00 is six less', () => {
  expect(aboveBy(6000n, 6600n, pounds)).toBe('-6.00');
});

it('an hour at 40.00 and an exam of 60.00 are 100.00, one lesson alone 40.00, and both owe half called off a day before', () => {
  const notice = {
    id: 'notice',
    kind: 'cancellation',
    terms: {
      clock: 'hours',
      scale: [{ before: 72, owes: { owes: 'nothing' } }],
      otherwise: { owes: 'share', share: 5000 },
    },
  };
  const under = tariff(1, [exam, lesson, notice]);
  const { whole, single, late } = startingExamples(under.clauses);
  const totals = [whole, single, late].map((of) => priceExample(of, under, reader).statement?.total);
  // The word comes 24 hours before each: 20.00 + 30.00.
  expect(totals).toEqual([10_000n, 4_000n, 5_000n]);
});
