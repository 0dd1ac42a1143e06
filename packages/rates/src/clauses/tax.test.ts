// Tax added or inside, against published values (see tax.values.json for their sources).

import { refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { CATEGORIES } from '../line.ts';
import { pounds, priced, tariffOf } from '../priced.ts';
import type { Statement } from '../statement.ts';
import { readTariff, sentencesOf, type WrittenClause } from '../tariff.ts';
import { fraction, rates, rounding, two } from './tax.values.json';

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

  it('of which one is only on a kind of charge leave it to that one: 5 % of the score, 20 % of the rest', () => {
    const both = [
      tax('full', { name: 'VAT', rate: 2000 }),
      tax('reduced', { name: 'VAT', rate: 500, only: ['cost'] }),
    ];
    expect(amounts([fee, costs, ...both])).toEqual([
      ['full', '20.00'],
      ['reduced', '1.00'],
    ]);
  });

  it('of which one names a clause leave it what that clause charges, whatever kind of charge that is', () => {
    const both = [
      tax('full', { name: 'VAT', rate: 2000 }),
      tax('reduced', { name: 'VAT', rate: 500, on: ['fee'] }),
    ];
    expect(amounts([fee, costs, ...both])).toEqual([
      ['full', '4.00'],
      ['reduced', '5.00'],
    ]);
  });

  it('are on their part each of what a late cancellation leaves of both: of half of 150.00, 50.00 and 25.00', () => {
    const half = { scale: [], otherwise: { owes: 'share', share: 5000 } };
    const { taxes } = priced(
      [
        fee,
        { id: 'notice', kind: 'cancellation', terms: half },
        {
          id: 'premium',
          kind: 'supplement',
          terms: { what: 'Sight-reading', by: { as: 'amount', amount: '50.00' } },
        },
        tax('full', { name: 'VAT', rate: 2000 }),
        tax('exempt', { name: 'VAT', rate: 0, code: 'E', on: ['premium'], wording: 'Exempt: tuition' }),
      ],
      { calls: ['lesson 60 on 2026-03-04'], fallen: [{ call: 0, at: '2026-03-04T08:00' }] },
    );
    expect(
      taxes.map(({ clause, base, amount, wording }) => [clause, pounds(base), pounds(amount), wording]),
    ).toEqual([
      ['full', '50.00', '10.00', undefined],
      ['exempt', '25.00', '0.00', 'Exempt: tuition'],
    ]);
  });

  it('say which kinds of charge each is not on, as the ledger asks', () => {
    const both = [
      tax('full', { name: 'VAT', rate: 2000 }),
      tax('reduced', { name: 'VAT', rate: 500, only: ['cost'] }),
    ];
    const kinds = priced([fee, costs, ...both], { calls: ['recital 60'], costs: ['Score 20.00'] }).taxes;
    expect(kinds.map(({ not }) => CATEGORIES.filter((kind) => !not?.includes(kind)))).toEqual([
      ['performance'],
      ['cost'],
    ]);
    expect(
      priced([fee, tax('vat', { name: 'VAT', rate: 2000 })], { calls: ['recital 60'] }).taxes[0],
    ).not.toHaveProperty('not');
  });

  it('both inside one price are each their share of it: 5 and 9.975 of 114.975', () => {
    const both = [
      tax('gst', { name: 'GST', rate: 500, inside: true }),
      tax('qst', { name: 'QST', rate: 997.5, inside: true }),
    ];
    const { taxes, net, total } = priced(
      [{ id: 'fee', kind: 'fixed', terms: { price: '114.98' } }, ...both],
      {
        calls: ['recital 60'],
      },
    );
    // 114.98 × 5 / 114.975 = 5.0002, 114.98 × 9.975 / 114.975 = 9.9754
    expect(taxes.map(({ base, amount }) => [base, amount].map(pounds))).toEqual([
      ['100.00', '5.00'],
      ['100.00', '9.98'],
    ]);
    expect([net, total].map(pounds)).toEqual(['100.00', '114.98']);
    expect(taxes[1]?.arithmetic).toBe('114.98 × 9.975 / 114.975 = 9.98');
  });

  it('inside one price where one is on top of the other: 9.5 % of 105 are 9.975 of 114.975', () => {
    const both = [
      tax('gst', { name: 'GST', rate: 500, inside: true }),
      tax('qst', { name: 'QST', rate: 950, inside: true, onTopOf: ['gst'] }),
    ];
    const { taxes } = priced([{ id: 'fee', kind: 'fixed', terms: { price: '114.98' } }, ...both], {
      calls: ['recital 60'],
    });
    expect(taxes.map(({ base, amount }) => [base, amount].map(pounds))).toEqual([
      ['100.00', '5.00'],
      ['105.00', '9.98'],
    ]);
  });

  it.each([
    ['of one name on the same charges', { name: 'VAT', rate: 2000 }, { name: 'vat', rate: 500 }],
    [
      'of one name that name one clause both',
      { name: 'VAT', rate: 2000, on: ['fee'] },
      { name: 'VAT', rate: 500, on: ['fee'] },
    ],
    [
      'of which one is inside the price and one is added to it',
      { name: 'GST', rate: 500, inside: true },
      { name: 'PST', rate: 800 },
    ],
    [
      'of which one is reckoned on top of what is no tax',
      { name: 'GST', rate: 500, onTopOf: ['fee'] },
      { name: 'PST', rate: 8 },
    ],
    [
      'each on top of the other',
      { name: 'GST', rate: 500, onTopOf: ['other'] },
      { name: 'PST', rate: 800, onTopOf: ['one'] },
    ],
    [
      'of which one says both what it is on and what it is not on',
      { name: 'VAT', rate: 5, only: ['cost'], not: ['travel'] },
      { name: 'GST', rate: 5 },
    ],
  ])('%s contradict', (_, one, other) => {
    expect(refusal([tax('one', one), tax('other', other)])).toBe('rates/contradiction');
  });

  it('say by name what is no tax, and what to do', () => {
    const answer = readTariff({
      name: 'Two',
      currency: 'GBP',
      version: 1,
      from: '2026-01-01',
      clauses: [fee, tax('qst', { name: 'QST', rate: 950, onTopOf: ['fee'] })],
    });
    expect(answer).toMatchObject({
      sentence: 'Clause “qst” names “fee” as a tax, and it is none. Name a tax, or remove the name.',
      field: '/clauses/1/terms',
    });
  });
});

describe(`several rates on one bill (${rates.source.publisher})`, () => {
  it.each(rates.invoices)('of $invoice', ({ taxes: published, total }) => {
    const fees = published.map(({ base }, index) => ({
      id: `fee-${index}`,
      kind: 'fixed',
      for: { labels: [`part ${index}`] },
      terms: { price: base },
    }));
    const taxes = published.map(({ rate }, index) => ({
      id: `tax-${index}`,
      kind: 'tax',
      terms: { name: 'VAT', rate, on: [`fee-${index}`] },
    }));
    const bill = priced([...fees, ...taxes], {
      calls: published.map((_, index) => `part ${index}: other 30`),
    });
    expect(bill.taxes.map(({ base, amount }) => ({ base: pounds(base), tax: pounds(amount) }))).toEqual(
      published.map(({ base, tax }) => ({ base, tax })),
    );
    expect(pounds(bill.total)).toBe(total);
  });
});

describe(`two taxes of one place (${two.source.publisher}: ${two.source.title})`, () => {
  const gst: WrittenClause = { id: 'gst', kind: 'tax', terms: { name: 'GST', rate: two.gst } };
  const sums = (price: string, qst: object) =>
    priced(
      [
        { id: 'fee', kind: 'fixed', terms: { price } },
        gst,
        { id: 'qst', kind: 'tax', terms: { name: 'QST', ...qst } },
      ],
      { calls: ['recital 60'] },
    ).taxes;

  it.each(two.added)('both on the price of $price are $gst and $qst', ({ price, gst, qst }) => {
    expect(sums(price, { rate: two.beside }).map(({ amount }) => pounds(amount))).toEqual([gst, qst]);
  });

  it.each(two.added)(
    'one on the price of $price with the other are $gst and $onTop',
    ({ price, gst, onTop }) => {
      const taxes = sums(price, { rate: two.onTop, onTopOf: ['gst'] });
      expect(taxes.map(({ amount }) => pounds(amount))).toEqual([gst, onTop]);
    },
  );

  it('say how they were reckoned', () => {
    expect(sums('45.00', { rate: two.beside })[1]?.arithmetic).toBe('9.975\u00a0% × 45.00 = 4.49');
    expect(sums('45.00', { rate: two.onTop, onTopOf: ['gst'] })[1]?.arithmetic).toBe(
      '9.5\u00a0% × (45.00 + 2.25) = 4.49',
    );
  });

  it('refuse a rate finer than a hundredth of a basis point', () => {
    const answer = readTariff({
      name: 'Fine',
      currency: 'CAD',
      version: 1,
      from: '2026-01-01',
      clauses: [{ id: 'qst', kind: 'tax', terms: { name: 'QST', rate: 997.505 } }],
    });
    expect(answer).toMatchObject({
      field: '/clauses/0/terms/rate',
      sentence: 'Clause “qst” at “/terms/rate”: is finer than a hundredth of a basis point. Round it.',
    });
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
    ['VAT at 9.975\u00a0% is added.', { rate: 997.5 }],
    ['VAT at 5\u00a0% is added to travel and costs.', { rate: 500, only: ['travel', 'cost'] }],
    [
      'No VAT is charged on travel and costs, exempt from it: “Disbursements”.',
      { rate: 0, code: 'E', only: ['travel', 'cost'], wording: 'Disbursements' },
    ],
  ])('says “%s”', (said, terms) => {
    const clause = { id: 'tax', kind: 'tax', terms: { name: 'VAT', ...terms } };
    expect(sentencesOf(tariffOf([clause]), 'en-GB')[0]?.sentence).toBe(said);
  });
});
