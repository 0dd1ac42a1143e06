// An invoice says why it asks for what it asks; what is owed on it is that, less what came in.

import type { InvoiceJson, PaymentJson } from '@colla/wire';
import { beforeEach, expect, it } from 'vitest';
import { speakIn } from '../../locale.ts';
import { lineWhy, netWhy, owedWhy, paymentWhy, receivedWhy, totalWhy } from './whys.ts';

beforeEach(() => speakIn('en-GB'));

const line = {
  key: 'hours:c1',
  clause: 'hours',
  what: 'Rehearsal',
  on: '2026-03-03',
  quantity: { count: 75, of: 60 },
  unit: 'hour',
  rate: '60.00',
  amount: '75.00',
  facts: [{ name: 'played', value: '70 min' }],
  arithmetic: '1.25 × 60.00 = 75.00',
};
const vat = { name: 'VAT', rate: 2000, code: 'S', inside: false, base: '75.00', amount: '15.00' };
const invoice: InvoiceJson = {
  id: 'i7',
  number: '2026-0007',
  engagement: 'e1',
  title: 'Winter songs',
  payer: 'payer',
  currency: 'GBP',
  from: { name: 'Rosalind Vanterpool', address: [] },
  to: { name: 'Mirembe Okalo', address: [], party: 'p1' },
  payTo: [],
  lines: [line],
  taxes: [vat],
  net: '75.00',
  tax: '15.00',
  total: '90.00',
  issuedOn: '2026-03-16',
  dueOn: '2026-04-15',
  paid: '40.00',
  owed: '50.00',
  is: 'part paid',
};
const payment: PaymentJson = {
  id: 'm1',
  party: 'p1',
  receivedOn: '2026-04-01',
  amount: '60.00',
  currency: 'GBP',
  method: 'bank transfer',
  reference: 'Songs',
  allocations: [
    { invoice: 'i6', amount: '20.00' },
    { invoice: 'i7', amount: '40.00' },
  ],
  credit: '0.00',
};
const sentences = [{ clause: 'hours', sentence: 'Rehearsals are 60.00 an hour.' }];

it('a line opens to the clause as agreed, its day, its facts and its arithmetic', () => {
  expect(lineWhy(line, invoice, sentences)).toMatchObject({
    sentence: 'Rehearsals are 60.00 an hour.',
    about: ['3 Mar 2026'],
    facts: ['played 70 min'],
    arithmetic: '1.25 × 60.00 = 75.00',
  });
});

it('a total is its lines and the tax added to them', () => {
  expect(totalWhy(invoice, sentences).arithmetic).toBe('75.00 + 15.00 = 90.00');
});

it('what stands before tax is the lines without the tax inside them', () => {
  // A sixth of 75.00 is tax of a fifth.
  const inside = { ...vat, inside: true, base: '62.50', amount: '12.50' };
  const why = netWhy({ ...invoice, taxes: [inside], net: '62.50', total: '75.00' }, sentences);
  expect(why.arithmetic).toBe('75.00 \u2212 12.50 = 62.50');
});

it('what is owed is what was asked for, less what of each payment is for this invoice', () => {
  expect(receivedWhy(invoice, [payment]).parts).toEqual([
    { what: '1 Apr 2026, bank transfer, Songs', amount: '40.00', currency: 'GBP' },
  ]);
  expect(owedWhy(invoice, sentences, [payment]).arithmetic).toBe('90.00 \u2212 40.00 = 50.00');
});

it('where nothing has come in, all that was asked for is owed', () => {
  const why = owedWhy({ ...invoice, paid: '0.00', owed: '90.00' }, sentences, []);
  expect(why.arithmetic).toBe('90.00 + 0.00 = 90.00');
  expect(why.parts?.[1]?.facts).toEqual(['Nothing has come in yet.']);
});

it('a payment says which invoices it was set against, and what of it is kept', () => {
  const more = { ...payment, amount: '63.75', credit: '3.75' };
  const why = paymentWhy(more, { i6: '2026-0006', i7: '2026-0007' });
  expect(why.parts?.map(({ what, amount }) => [what, amount])).toEqual([
    ['For invoice 2026-0006', '20.00'],
    ['For invoice 2026-0007', '40.00'],
    ['Kept as credit', '3.75'],
  ]);
  expect(why.arithmetic).toBe('20.00 + 40.00 + 3.75 = 63.75');
});
