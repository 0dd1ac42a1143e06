// The money of a season is put together from payers and engagements, what is earned from months.

import { beforeEach, expect, test } from 'vitest';
import { speakIn } from '../../locale.ts';
import type { OwedPart } from './sums.ts';
import { type Earning, type Explained, earnedInAll, earnedWhys, owedWhy } from './whys.ts';

beforeEach(() => speakIn('en-GB'));

const explained: Explained = {
  owing: ({ engagement }, which) => `${which} of ${engagement}`,
  earning: ({ engagement, month }) => `${engagement} in ${month}`,
};
const nought = { toInvoice: '0.00', beyond: '0.00', owed: '0.00', overdue: '0.00' };
const part = (payerName: string, engagement: string, of: Partial<OwedPart>): OwedPart => ({
  payer: payerName,
  payerName,
  engagement,
  title: engagement,
  currency: 'EUR',
  ...nought,
  ...of,
});

test('what is owed is the sum of who owes what for which engagement, and nothing of another currency', () => {
  const parts = [
    part('Freya Lindqvar', 'Audition', { owed: '273.72', overdue: '273.72' }),
    part('Harbour Road School', 'Classes', { owed: '90.00' }),
    part('Harbour Road School', 'Exams', { toInvoice: '40.00' }),
    part('Pellow Sands Singers', 'Tour', { owed: '50.00', currency: 'GBP' }),
  ];
  const why = owedWhy('owed', { currency: 'EUR', ...nought, owed: '363.72' }, parts, explained);
  expect(why).toMatchObject({ what: 'Invoiced and owed', arithmetic: '273.72 + 90.00 = 363.72' });
  expect(why.parts?.map(({ what }) => what)).toEqual([
    'Freya Lindqvar: Audition',
    'Harbour Road School: Classes',
  ]);
  expect(why.parts?.[0]?.later?.()).toBe('owed of Audition');
});

test('what is earned is summed by month, and in all', () => {
  const earning = (month: string, engagement: string, amount: string): Earning => ({
    engagement,
    title: engagement,
    month,
    currency: 'EUR',
    amount,
    keys: [],
  });
  const months = earnedWhys(
    [
      earning('2026-09-01', 'Juries', '260.00'),
      earning('2026-09-01', 'Classes', '90.50'),
      earning('2026-10-01', 'Juries', '40.00'),
    ],
    explained,
  );
  expect(months.map(({ what, amount, arithmetic }) => [what, amount, arithmetic])).toEqual([
    ['September 2026', '350.50', '260.00 + 90.50 = 350.50'],
    ['October 2026', '40.00', undefined],
  ]);
  expect(months[0]?.parts?.[1]?.later?.()).toBe('Classes in 2026-09-01');
  expect(earnedInAll(months)).toMatchObject([{ amount: '390.50', arithmetic: '350.50 + 40.00 = 390.50' }]);
});
