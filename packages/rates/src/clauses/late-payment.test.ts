// Late payment against published and derived values: each names its source.

import { Temporal } from '@colla/calendar';
import { type Currency, currency } from '@colla/money';
import { granted, Refusal } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { given } from '../given.ts';
import { latePayment } from '../late.ts';
import { POUNDS, pounds, tariffOf } from '../priced.ts';
import { sentencesOf } from '../tariff.ts';

const EUROS = granted(currency('EUR'));
const due = Temporal.PlainDate.from('2026-03-31');

function late(by: object, debt: { amount: bigint; days: number; dueOn?: string }, money: Currency = POUNDS) {
  const tariff = tariffOf([{ id: 'late', kind: 'late-payment', terms: { by } }], money);
  const dueOn = debt.dueOn === undefined ? due : Temporal.PlainDate.from(debt.dueOn);
  const asked = { amount: debt.amount, dueOn, on: dueOn.add({ days: debt.days }) };
  return latePayment(given({}, money), { tariff, locale: 'en-GB' }, asked);
}

const uk = { as: 'statutory', law: 'UK' };
const eu = { as: 'statutory', law: 'EU' };

describe('interest and the fixed sum that the law of the United Kingdom adds', () => {
  it.each<[string, bigint, number, string, string, string]>([
    ['650.00 a day late in 2026H1 at 11.75 %: GOV.UK, derived', 65_000n, 1, '2026-03-31', '0.21', '40.00'],
    ['650.00 for 366 days: 365 stays the divisor', 65_000n, 366, '2026-03-31', '76.58', '40.00'],
    ['a debt of 0.01 has the sum of 40.00', 1n, 1, '2026-03-31', '0.00', '40.00'],
    ['so has one of 999.99', 99_999n, 1, '2026-03-31', '0.32', '40.00'],
    ['one of 9,999.99 has 70.00', 999_999n, 1, '2026-03-31', '3.22', '70.00'],
    ['one of 10,000.00 has 100.00', 1_000_000n, 1, '2026-03-31', '3.22', '100.00'],
    ['12,000.00 paid on the day it was due owes nothing', 1_200_000n, 0, '2026-03-31', '0.00', '0.00'],
    [
      'what is due on 30 June became late in the second half: 1,000.00 at 13.25 % for 10 days',
      100_000n,
      10,
      '2024-06-30',
      '3.63',
      '70.00',
    ],
  ])('%s', (_, amount, days, dueOn, interest, sum) => {
    const charge = granted(
      late(uk, { amount, days, dueOn }) ?? new Refusal('rates/none', 'Nothing is late.', {}),
    );
    expect([pounds(charge.interest), pounds(charge.sum), charge.days]).toEqual([
      interest,
      sum,
      Math.max(0, days),
    ]);
  });

  it('is refused where the reference rate of the half-year is not known', () => {
    expect(late(uk, { amount: 100_000n, days: 30, dueOn: '2031-01-31' })).toMatchObject({
      code: 'rates/no-reference-rate',
    });
  });
});

it('1,800.00 euro 22 days late at 10.15 % (EU, derived) are 11.01 and 40.00', () => {
  const charge = late(eu, { amount: 180_000n, days: 22, dueOn: '2026-03-31' }, EUROS);
  expect(charge).toMatchObject({ interest: 1101n, sum: 4000n, total: 5101n });
});

describe('a rate of the agreement', () => {
  it('of 12.50 % on 5,000.00 for 30 days is 51.37 (derived), and says so', () => {
    const charge = late({ as: 'yearly rate', rate: 1250 }, { amount: 500_000n, days: 30 });
    expect(charge).toMatchObject({
      total: 5137n,
      arithmetic: '12.5\u00a0% × 5,000.00 × 30 days / 365 = 51.37',
    });
  });

  it('of 8.5 % on 1,000.00 for 50 days is 11.64, or 11.50 where each day is rounded (GOV.UK example)', () => {
    const exact = late({ as: 'yearly rate', rate: 850 }, { amount: 100_000n, days: 50 });
    const daily = late(
      { as: 'yearly rate', rate: 850, day: 'rounded each day' },
      { amount: 100_000n, days: 50 },
    );
    expect([exact, daily]).toMatchObject([{ total: 1164n }, { total: 1150n }]);
  });

  it('of 1.5 % for each month begun: 31 days after the end of March the second month has begun', () => {
    const by = { as: 'share a month', share: 150 };
    expect(late(by, { amount: 100_000n, days: 30 })).toMatchObject({ total: 1500n });
    expect(late(by, { amount: 100_000n, days: 31 })).toMatchObject({ total: 3000n });
  });

  it('or a sum, whatever the days', () => {
    expect(late({ as: 'sum', amount: '20.00' }, { amount: 100_000n, days: 3 })).toMatchObject({
      total: 2000n,
    });
  });
});

it('a tariff that says nothing of late payment adds nothing', () => {
  const tariff = tariffOf([{ id: 'fee', kind: 'hourly', terms: { price: '60.00' } }]);
  expect(
    latePayment(given({}, POUNDS), { tariff, locale: 'en-GB' }, { amount: 1n, dueOn: due, on: due }),
  ).toBeUndefined();
});

it.each([
  [{ as: 'sum', amount: '20.00' }, 'An invoice that is paid after it is due costs 20.00 more.'],
  [
    { as: 'share a month', share: 150 },
    'An invoice that is paid after it is due costs 1.5\u00a0% of it for each month begun.',
  ],
  [
    { as: 'yearly rate', rate: 850, day: 'rounded each day' },
    'An invoice that is paid after it is due costs 8.5\u00a0% of it a year, by the day in a year of 365 days, rounded each day.',
  ],
  [
    { as: 'statutory', law: 'EU', year: '360 days', day: 'rounded each day' },
    'An invoice that is paid after it is due costs interest 8\u00a0% above the reference rate of the European Union and its fixed sum, by the day in a year of 360 days, rounded each day.',
  ],
])('it says what it costs', (by, said) => {
  const tariff = tariffOf([{ id: 'late', kind: 'late-payment', terms: { by } }]);
  expect(sentencesOf(tariff, 'en-GB')[0]?.sentence).toBe(said);
});
