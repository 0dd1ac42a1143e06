import { expect, test } from 'vitest';
import { isOwing, minutesByStanding, moneyIn } from './sums.ts';
import type { StaveJson } from './view.ts';

const stave = (money: StaveJson['money']): StaveJson => ({
  party: 'aldbury',
  name: 'Aldbury College',
  marks: [],
  engagements: 1,
  toInvoice: 0,
  overdue: 0,
  money,
  owing: [],
});

test('money of two staves is added to the cent within its currency, and never across', () => {
  const sums = moneyIn([
    stave([{ currency: 'EUR', toInvoice: '0.10', owed: '310.00', overdue: '0.00' }]),
    stave([
      { currency: 'EUR', toInvoice: '0.20', owed: '99.95', overdue: '99.95' },
      { currency: 'JPY', toInvoice: '12000', owed: '0', overdue: '0' },
    ]),
  ]);
  expect(sums).toEqual([
    { currency: 'EUR', toInvoice: '0.30', owed: '409.95', overdue: '99.95' },
    { currency: 'JPY', toInvoice: '12000', owed: '0', overdue: '0' },
  ]);
});

test('nothing is owed where both figures are nought', () => {
  expect(isOwing({ currency: 'EUR', toInvoice: '0.00', owed: '0.00', overdue: '0.00' })).toBe(false);
});

test('the minutes of a season are told by standing', () => {
  const week = { monday: '2026-08-31', played: 90, agreed: 60, held: 0, byStave: {} };
  expect(minutesByStanding([week, { ...week, held: 30 }])).toEqual({ played: 180, agreed: 120, held: 30 });
});
