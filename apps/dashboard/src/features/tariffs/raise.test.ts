// All rates are raised for a new season, and nothing but rates.

import { currency } from '@colla/money';
import { readTariff, type WrittenTariff } from '@colla/rates';
import { granted, refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { type Raise, raiseRates } from './raise.ts';

const reader = { currency: granted(currency('GBP')), locale: 'en-GB' };
const written: WrittenTariff = {
  name: 'Pupils',
  currency: 'GBP',
  version: 1,
  from: '2026-01-01',
  clauses: [
    {
      id: 'exam',
      kind: 'fixed',
      for: { calls: ['exam'] },
      terms: {
        price: '62.00',
        includes: 30,
        beyond: { price: '15.50', per: 15 },
        band: { from: '50.00', to: '75.00' },
      },
    },
    { id: 'sunday', kind: 'supplement', terms: { what: 'Sundays', by: { as: 'share', share: 2000 } } },
    { id: 'day', kind: 'supplement', terms: { what: 'Days', by: { as: 'amount', amount: '12.00' } } },
    { id: 'way', kind: 'travel', terms: { unit: 'km', perUnit: '0.38' } },
    {
      id: 'notice',
      kind: 'cancellation',
      terms: {
        scale: [{ before: 48, owes: { owes: 'amount', amount: '20.00' } }],
        otherwise: { owes: 'share', share: 5000 },
      },
    },
  ],
};

function after(by: Raise): Record<string, string> {
  const { raised } = raiseRates(written, by, reader);
  return Object.fromEntries(raised.map(({ pointer, is }) => [pointer.replace(/^\/clauses\//, ''), is]));
}

describe('raising all rates by 3 per cent', () => {
  it('raises each amount to the penny where nothing is rounded', () => {
    // 62 + 1.86; 15.50 + 0.465; 50 + 1.50; 75 + 2.25; 12 + 0.36; 0.38 + 0.0114; 20 + 0.60.
    expect(after({ share: 300, round: 'exact' })).toEqual({
      '0/terms/price': '63.86',
      '0/terms/beyond/price': '15.97',
      '0/terms/band/from': '51.50',
      '0/terms/band/to': '77.25',
      '2/terms/by/amount': '12.36',
      '3/terms/perUnit': '0.39',
      '4/terms/scale/0/owes/amount': '20.60',
    });
  });

  it('leaves alone what sums are rounded to: that is a step, and no price', () => {
    const terms = { on: ['exam'], most: '80.00', rounded: { to: '5.00' } };
    const rounded = { ...written, clauses: [{ id: 'whole', kind: 'limit', terms }] };
    // 80 + 2.40
    expect(raiseRates(rounded, { share: 300, round: 'exact' }, reader).written.clauses).toEqual([
      { id: 'whole', kind: 'limit', terms: { ...terms, most: '82.40' } },
    ]);
  });

  it('rounds to whole pounds, but not the price of a kilometre', () => {
    expect(after({ share: 300, round: 'whole' })).toEqual({
      '0/terms/price': '64.00',
      '0/terms/beyond/price': '16.00',
      '0/terms/band/from': '52.00',
      '0/terms/band/to': '77.00',
      '2/terms/by/amount': '12.00',
      '3/terms/perUnit': '0.39',
      '4/terms/scale/0/owes/amount': '21.00',
    });
  });

  it('rounds to fifty pence', () => {
    const { '0/terms/price': price, '0/terms/beyond/price': beyond } = after({ share: 300, round: 'half' });
    // 63.86 lies nearer to 64.00 than to 63.50, 15.965 nearer to 16.00.
    expect([price, beyond]).toEqual(['64.00', '16.00']);
  });

  it('leaves shares, times and the wording as they are, and the tariff can still be read', () => {
    const { written: raised } = raiseRates(written, { share: 300, round: 'whole' }, reader);
    expect(raised.clauses[1]).toEqual(written.clauses[1]);
    expect(raised.clauses[0]?.terms.includes).toBe(30);
    expect(raised.clauses[4]?.terms.otherwise).toEqual({ owes: 'share', share: 5000 });
    expect(refused(readTariff(raised))).toBe(false);
  });
});

it('lowering by 10 per cent makes 62.00 into 55.80', () => {
  expect(after({ share: -1000, round: 'exact' })['0/terms/price']).toBe('55.80');
});

it('names each amount by its clause and its parameter', () => {
  const { raised } = raiseRates(written, { share: 300, round: 'exact' }, reader);
  expect(raised[1]).toMatchObject({ clause: 'exam', was: '15.50' });
  expect(raised[1]?.title).toBe('Time beyond what is included, Price beyond');
});

it('names an amount of a step by what it leaves to pay, and the number of its step', () => {
  const { raised } = raiseRates(written, { share: 300, round: 'exact' }, reader);
  expect(raised.at(-1)?.title).toBe('Leaves to pay, Amount (1)');
});
