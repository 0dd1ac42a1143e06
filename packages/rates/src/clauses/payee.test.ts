// Two parties are paid: the pianist by invoice, the festival by whoever owes it.

import { expect, it } from 'vitest';
import { pounds, priced } from '../priced.ts';

it('the festival’s fee is shown for each payer beside the statement, and taxed by nobody here', () => {
  const bill = priced(
    [
      { id: 'round', kind: 'fixed', for: { calls: ['competition round'] }, terms: { price: '60.00' } },
      {
        id: 'arranging',
        kind: 'supplement',
        terms: { what: 'Arranging', by: { as: 'amount', amount: '15.00', each: 'engagement' } },
      },
      {
        id: 'halves',
        kind: 'split',
        terms: {
          among: [
            { payer: 'school', parts: 1 },
            { payer: 'family', parts: 1 },
          ],
        },
      },
      { id: 'to', kind: 'payee', terms: { payee: 'the festival', of: ['arranging'] } },
      { id: 'vat', kind: 'tax', terms: { name: 'VAT', rate: 2000 } },
    ],
    { calls: ['competition round 20'] },
  );
  // 60.00 and a fifth of it; 15.00 in two halves of 7.50
  expect(pounds(bill.total)).toBe('72.00');
  expect(bill.toOthers.map(({ payee, payer, amount }) => [payee, payer, pounds(amount)])).toEqual([
    ['the festival', 'school', '7.50'],
    ['the festival', 'family', '7.50'],
  ]);
});

it('two who are paid of one fee each have a line of their own: 15 % of 300.00, and a tenth of the 255.00 left', () => {
  const { toOthers, total } = priced(
    [
      { id: 'fee', kind: 'fixed', terms: { price: '300.00' } },
      { id: 'one', kind: 'payee', terms: { payee: 'the agency', share: 1500 } },
      { id: 'other', kind: 'payee', terms: { payee: 'the festival', share: 1000 } },
    ],
    { calls: ['recital 60'] },
  );
  expect(toOthers.map(({ key, amount }) => [key, pounds(amount)])).toEqual([
    ['fee:c000/the agency', '45.00'],
    ['fee:c000/the festival', '25.50'],
  ]);
  expect(pounds(total)).toBe('229.50');
});
