// Tax added or inside, against published values (see tax.values.json for their sources).

import { refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { CATEGORIES } from '../line.ts';
import { pounds, priced, tariffOf } from '../priced.ts';
import type { Statement } from '../statement.ts';
import { readTariff, sentencesOf, type WrittenClause } from '../tariff.ts';
import { fraction, rounding } from './tax.values.json';

/** A bill of one jury for each price, with a tax. */
function bill(
  prices: readonly string[],
  tax: WrittenClause['terms'],
  more: readonly WrittenClause[] = [],
): Statement {
  const fees = prices.map((price, index) => ({
    id: `jury-${index}`,
    kind: 'fixed',
    for: { calls: ['jury' as const], labels: [`jury ${index}`] },
    terms: { price },
  }));
  const calls = prices.map((_, index) => `jury ${index}: jury 20`);
  return priced([...fees, ...more, { id: 'tax', kind: 'tax', terms: { name: 'VAT', ...tax } }], { calls });
}

describe(`tax added (${rounding.source.publisher}, ${rounding.source.section})`, () => {
  it.each(rounding.added.map(({ net, tax }) => [net, tax]))('on %s is %s', (net, tax) => {
    const { taxes, net: sum, total } = bill([net], { rate: rounding.rate });
    expect(taxes.map(({ amount }) => pounds(amount))).toEqual([tax]);
    expect(total).toBe(sum + (taxes[0]?.amount ?? 0n));
  });

  it('is rounded once on the total of a document', () => {
    const { taxes } = bill(rounding.lines.net, { rate: rounding.rate });
    expect(taxes.map(({ amount }) => pounds(amount))).toEqual([rounding.lines.perTotal]);
  });

  it('or line by line, where the tariff says so', () => {
    const { taxes } = bill(rounding.lines.net, { rate: rounding.rate, rounding: 'per line' });
    expect(taxes.map(({ amount }) => pounds(amount))).toEqual([rounding.lines.perLine]);
  });

  it('is rounded for each payer, who each get a document: 2.50 twice on 12.48, not 4.99 on 24.96', () => {
    const halves = {
      id: 'halves',
      kind: 'split',
      terms: {
        among: [
          { payer: 'school', parts: 1 },
          { payer: 'family', parts: 1 },
        ],
      },
    };
    const { taxes, payers } = bill(['24.96'], { rate: rounding.rate }, [halves]);
    expect(taxes.map(({ payer, amount }) => [payer, pounds(amount)])).toEqual([
      ['school', '2.50'],
      ['family', '2.50'],
    ]);
    expect(payers.map(({ total }) => pounds(total))).toEqual(['14.98', '14.98']);
  });
});

describe(`tax inside (${fraction.source.publisher}, ${fraction.source.title})`, () => {
  it.each(fraction.inside.map(({ gross, tax, net }) => [gross, tax, net]))(
    '%s is %s and %s net',
    (gross, tax, net) => {
      const sums = bill([gross], { rate: fraction.rate, inside: true });
      expect([sums.total, sums.tax, sums.net].map(pounds)).toEqual([gross, tax, net]);
    },
  );
});

describe('two taxes', () => {
  const fee: WrittenClause = { id: 'fee', kind: 'fixed', terms: { price: '100.00' } };
  const costs: WrittenClause = { id: 'costs', kind: 'cost', terms: {} };
  const tax = (id: string, terms: object): WrittenClause => ({ id, kind: 'tax', terms: { ...terms } });
  const amounts = (clauses: WrittenClause[]) =>
    priced(clauses, { calls: ['recital 60'], costs: ['Score 20.00'] }).taxes.map(({ clause, amount }) => [
      clause,
      pounds(amount),
    ]);
  const refusal = (taxes: WrittenClause[]) => {
    const answer = readTariff({
      name: 'Two',
      currency: 'GBP',
      version: 1,
      from: '2026-01-01',
      clauses: [fee, ...taxes],
    });
    return refused(answer) && answer.code;
  };

  it('of different names are both added to the same charges: 5 % and 8 % of 120.00', () => {
    const both = [tax('gst', { name: 'GST', rate: 500 }), tax('pst', { name: 'PST', rate: 800 })];
    expect(amounts([fee, costs, ...both])).toEqual([
      ['gst', '6.00'],
      ['pst', '9.60'],
    ]);
  });

  it('of one name are two rates where they are on different charges: 20 % of the fee, 5 % of the score', () => {
    const others = CATEGORIES.filter((category) => category !== 'cost');
    const both = [
      tax('full', { name: 'VAT', rate: 2000, not: ['cost'] }),
      tax('reduced', { name: 'VAT', rate: 500, not: others }),
    ];
    expect(amounts([fee, costs, ...both])).toEqual([
      ['full', '20.00'],
      ['reduced', '1.00'],
    ]);
  });

  it.each([
    ['of one name on the same charges', { name: 'VAT', rate: 2000 }, { name: 'vat', rate: 500 }],
    [
      'both inside one price, which neither can be told from',
      { name: 'GST', rate: 500, inside: true },
      { name: 'PST', rate: 800, inside: true },
    ],
  ])('%s contradict', (_, one, other) => {
    expect(refusal([tax('one', one), tax('other', other)])).toBe('rates/contradiction');
  });
});

describe('tax', () => {
  it('inside the price is reckoned on what is left of it: 20.00 on a net of 100.00', () => {
    const { taxes } = priced(
      [
        { id: 'fee', kind: 'fixed', terms: { price: '120.00' } },
        { id: 'vat', kind: 'tax', terms: { name: 'VAT', rate: 2000, inside: true } },
      ],
      {
        calls: ['recital 60'],
      },
    );
    expect(taxes.map(({ base, amount }) => [pounds(base), pounds(amount)])).toEqual([['100.00', '20.00']]);
  });

  it('leaves out what the tariff leaves out', () => {
    const costs: WrittenClause = { id: 'costs', kind: 'cost', terms: {} };
    const tax: WrittenClause = { id: 'tax', kind: 'tax', terms: { name: 'VAT', rate: 2000, not: ['cost'] } };
    expect(priced([costs, tax], { costs: ['Score 12.00'] }).tax).toBe(0n);
  });

  it.each([
    ['VAT at 20\u00a0% is added.', { rate: 2000 }],
    ['Prices include VAT at 20\u00a0%.', { rate: 2000, inside: true }],
    ['VAT at 20\u00a0% is added, not on travel and costs.', { rate: 2000, not: ['travel', 'cost'] }],
    ['Everything is exempt from VAT.', { rate: 0, code: 'E' }],
    ['VAT is owed by the payer under the reverse charge.', { rate: 0, code: 'AE' }],
  ])('says “%s”', (said, terms) => {
    const clause = { id: 'tax', kind: 'tax', terms: { name: 'VAT', ...terms } };
    expect(sentencesOf(tariffOf([clause]), 'en-GB')[0]?.sentence).toBe(said);
  });
});
