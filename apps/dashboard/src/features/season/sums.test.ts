import { expect, test } from 'vitest';
import { isOwing, minutesByStanding, moneyIn, payersIn } from './sums.ts';
import type { StaveJson } from './view.ts';

type Owing = StaveJson['owing'][number];

const stave = (owing: readonly Partial<Owing>[]): StaveJson => ({
  party: 'aldbury',
  name: 'Aldbury College',
  marks: [],
  engagements: 1,
  toInvoice: 0,
  overdue: 0,
  money: [],
  owing: owing.map((part) => ({
    engagement: 'finals',
    title: 'Finals',
    payer: 'college',
    payerName: 'Aldbury College',
    currency: 'EUR',
    toInvoice: '0.00',
    owed: '0.00',
    overdue: '0.00',
    ...part,
  })),
});

test('money of two staves is added to the cent within its currency, and never across', () => {
  const sums = moneyIn([
    stave([{ toInvoice: '0.10', owed: '310.00' }]),
    stave([
      { toInvoice: '0.20', owed: '99.95', overdue: '99.95' },
      { currency: 'JPY', toInvoice: '12000', owed: '0', overdue: '0' },
    ]),
  ]);
  expect(sums).toEqual([
    { currency: 'EUR', toInvoice: '0.30', beyond: '0.00', owed: '409.95', overdue: '99.95' },
    { currency: 'JPY', toInvoice: '12000', beyond: '0', owed: '0', overdue: '0' },
  ]);
});

test('what was invoiced beyond what is owed now stands by itself, and lessens nothing still to invoice', () => {
  expect(moneyIn([stave([{ toInvoice: '-132.00' }, { toInvoice: '150.00' }])])).toEqual([
    { currency: 'EUR', toInvoice: '150.00', beyond: '132.00', owed: '0.00', overdue: '0.00' },
  ]);
});

test('who owes is named by who pays, whatever staves the work stands on', () => {
  const freya = { payer: 'freya', payerName: 'Freya Lindqvar' };
  const staves = [
    stave([{ ...freya, engagement: 'audition', owed: '273.72', overdue: '273.72' }]),
    stave([
      { ...freya, engagement: 'recital', toInvoice: '60.00' },
      { engagement: 'jury', owed: '45.00' },
    ]),
  ];
  const owed = payersIn(staves);
  expect(owed.map(({ name, toInvoice, owed }) => [name, toInvoice, owed])).toEqual([
    ['Aldbury College', '0.00', '45.00'],
    ['Freya Lindqvar', '60.00', '273.72'],
  ]);
  expect(owed[1]?.from.map(({ engagement }) => engagement)).toEqual(['audition', 'recital']);
});

test('nothing is owed where all figures are nought', () => {
  const nought = { currency: 'EUR', toInvoice: '0.00', beyond: '0.00', owed: '0.00', overdue: '0.00' };
  expect(isOwing(nought)).toBe(false);
});

test('the minutes of a season are told by standing', () => {
  const week = { monday: '2026-08-31', played: 90, agreed: 60, held: 0, byStave: {} };
  expect(minutesByStanding([week, { ...week, held: 30 }])).toEqual({ played: 180, agreed: 120, held: 30 });
});
