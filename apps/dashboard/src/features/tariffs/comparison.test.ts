// Two tariffs are tried on one engagement, clause beside clause.

import { readTariff, type WrittenClause } from '@colla/rates';
import { granted } from '@colla/refusal';
import { expect, it } from 'vitest';
import { type ComparedRow, compareOn } from './comparison.ts';
import { chargedWhy, differenceWhy, totalWhy } from './comparison-whys.ts';
import { startingExamples } from './example.ts';

const said = { locale: 'en-GB', zone: 'Europe/London' };

function tariff(...clauses: WrittenClause[]) {
  return granted(readTariff({ name: 'Any', currency: 'GBP', version: 1, from: '2026-01-01', clauses }));
}

function amounts(rows: readonly ComparedRow[]) {
  return rows.map(({ one, other }) => [one?.clause, one?.amount, other?.clause, other?.amount]);
}

const lesson = (id: string, price: string) => ({
  id,
  kind: 'hourly',
  for: { calls: ['lesson'] as const },
  terms: { price },
});
const exam = { id: 'exam', kind: 'fixed', for: { calls: ['exam'] as const }, terms: { price: '60.00' } };

it('clauses of one name stand together, then those of one kind, and the rest alone', () => {
  const one = tariff(lesson('lesson', '40.00'), exam);
  const other = tariff({ ...exam, terms: { price: '66.00' } }, lesson('hours', '44.00'), {
    id: 'sunday',
    kind: 'supplement',
    terms: { what: 'More', by: { as: 'amount', amount: '5.00', each: 'engagement' } },
  });
  // One lesson of an hour and one exam.
  const { rows } = compareOn(startingExamples(one.clauses).whole, one, other, said);
  expect(amounts(rows)).toEqual([
    ['lesson', 4_000n, 'hours', 4_400n],
    ['exam', 6_000n, 'exam', 6_600n],
    [undefined, undefined, 'sunday', 500n],
  ]);
});

it('a tax that is added is a row of its own, and the rows come to the total', () => {
  const tax = { id: 'tax', kind: 'tax', terms: { name: 'VAT', rate: 2000 } };
  const one = tariff(exam);
  const other = tariff(exam, tax);
  const compared = compareOn(startingExamples(one.clauses).whole, one, other, said);
  expect(amounts(compared.rows)).toEqual([
    ['exam', 6_000n, 'exam', 6_000n],
    [undefined, undefined, 'tax', 1_200n],
  ]);
  expect([compared.one?.total, compared.other?.total]).toEqual([6_000n, 7_200n]);
});

it('each sum says what it is put together from, and a difference which two it lies between', () => {
  const one = tariff(lesson('lesson', '40.00'), exam);
  const other = tariff(lesson('lesson', '44.00'));
  const { rows, ...compared } = compareOn(startingExamples(one.clauses).whole, one, other, said);
  const [lessons, exams] = rows;
  const charged = lessons?.one && chargedWhy(lessons.one, one.currency);
  expect(charged?.parts?.map(({ what, arithmetic }) => [what, arithmetic])).toEqual([
    ['Lesson', '1 × 40.00 = 40.00'],
  ]);
  const first = totalWhy(rows, 'one', { tariff: one, statement: compared.one });
  const second = totalWhy(rows, 'other', { tariff: other, statement: compared.other });
  expect([first.arithmetic, second.amount]).toEqual(['40.00 + 60.00 = 100.00', '44.00']);
  expect(differenceWhy(first, second, one.currency).arithmetic).toBe('44.00 \u2212 100.00 = \u221256.00');
  const only = exams?.one && chargedWhy(exams.one, one.currency);
  expect(differenceWhy(only, undefined, one.currency).amount).toBe('-60.00');
});

it('what a cancellation costs and when is paid are set side by side, though they charge nothing here', () => {
  const notice = (before: number) => ({
    id: 'notice',
    kind: 'cancellation',
    terms: { scale: [{ before, owes: { owes: 'nothing' } }], otherwise: { owes: 'all' } },
  });
  const payment = { id: 'payment', kind: 'payment', terms: { due: [{ event: 'invoice', days: 30 }] } };
  const one = tariff(exam, notice(48));
  const other = tariff(exam, notice(72), payment);
  const { rows, silent } = compareOn(startingExamples(one.clauses).whole, one, other, said);
  expect(amounts(rows)).toEqual([['exam', 6_000n, 'exam', 6_000n]]);
  expect(silent.map(({ one, other }) => [one?.clause, other?.clause])).toEqual([
    ['notice', 'notice'],
    [undefined, 'payment'],
  ]);
});

it('a lesson that the other puts no price on is named by it', () => {
  const one = tariff(lesson('lesson', '40.00'), exam);
  const compared = compareOn(startingExamples(one.clauses).whole, one, tariff(exam), said);
  expect([compared.one?.unpriced, compared.other?.unpriced]).toEqual([[], ['000']]);
});
