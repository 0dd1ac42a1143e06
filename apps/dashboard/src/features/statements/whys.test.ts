// Every amount of a statement says why, and the parts it names come to it.

import { Temporal } from '@colla/calendar';
import { currency } from '@colla/money';
import { type Given, given, readTariff, sentencesOf, statement, type WrittenClause } from '@colla/rates';
import { granted } from '@colla/refusal';
import { showStatement } from '@colla/wire';
import { expect, it } from 'vitest';
import type { Why } from '../../ui/index.ts';
import { partsOf, type Reckoned } from './reckoning.ts';
import { cancelledWhy, depositWhy, instalmentsWhy, netWhy, payerWhy, statementWhy } from './whys.ts';

const pounds = granted(currency('GBP'));

function reckon(clauses: readonly WrittenClause[], facts: Given): Reckoned {
  const tariff = granted(
    readTariff({ name: 'Any', currency: 'GBP', version: 1, from: '2026-01-01', clauses }),
  );
  const asOf = Temporal.ZonedDateTime.from('2026-03-01T09:00[Europe/London]');
  return {
    statement: showStatement(statement(given(facts, pounds), { tariff, locale: 'en-GB' }, asOf)),
    sentences: sentencesOf(tariff, 'en-GB'),
    callNames: { c000: 'Rehearsal, Mon 2 Mar', c001: 'Rehearsal, Tue 3 Mar' },
    payerNames: { payer: 'Mirembe Okalo' },
  };
}

const hours = { id: 'hours', kind: 'hourly', terms: { price: '60.00' } };
const early = {
  id: 'early',
  kind: 'discount',
  terms: { what: 'Booked early', by: { as: 'amount', amount: '10.00' } },
};
const vat = { id: 'vat', kind: 'tax', terms: { name: 'VAT', rate: 2000 } };

const only = (of: Reckoned) => {
  const [part] = partsOf(of);
  if (!part) throw new Error('nobody pays');
  return part;
};
const amounts = ({ parts = [] }: Why) => parts.map(({ what, amount }) => [what, amount]);

it('a total says which lines and which tax it is put together from', () => {
  // An hour, and an hour and a half: 60.00 + 90.00; less 10.00 for each; a fifth of 130.00 is 26.00.
  const of = reckon([hours, early, vat], { calls: ['rehearsal 60', 'rehearsal 90'] });
  const why = payerWhy(only(of), of);
  expect(why.arithmetic).toBe('60.00 + 90.00 \u2212 10.00 \u2212 10.00 + 26.00 = 156.00');
  expect(amounts(why)).toEqual([
    ['Rehearsal', '60.00'],
    ['Rehearsal', '90.00'],
    ['Booked early', '-10.00'],
    ['Booked early', '-10.00'],
    ['VAT', '26.00'],
  ]);
  expect(why.parts?.[1]).toMatchObject({
    about: ['Rehearsal, Tue 3 Mar'],
    facts: ['played 1.5 h', 'charged 1.5 h'],
    arithmetic: '1.5 × 60.00 = 90.00',
  });
  expect(why.parts?.[1]?.sentence).toContain('60.00 an hour');
  expect(why.parts?.[4]?.facts).toEqual(['on 130.00']);
});

it('what stands before tax is the lines without the tax inside them', () => {
  // 60.00 holds a sixth of itself as tax of a fifth: 10.00.
  const inside = { id: 'vat', kind: 'tax', terms: { name: 'VAT', rate: 2000, inside: true } };
  const of = reckon([hours, inside], { calls: ['rehearsal 60'] });
  expect(netWhy(only(of), of).arithmetic).toBe('60.00 \u2212 10.00 = 50.00');
  expect(payerWhy(only(of), of)).toMatchObject({ amount: '60.00', arithmetic: undefined });
});

it('where two share, the total is the sum of what each pays', () => {
  const class60 = {
    id: 'class',
    kind: 'fixed',
    for: { calls: ['class'] },
    payer: 'school',
    terms: { price: '30.00' },
  };
  const of = reckon([class60, hours], { calls: ['class 60', 'rehearsal 60'] });
  const why = statementWhy(of);
  expect(why).toMatchObject({ amount: '90.00', arithmetic: '30.00 + 60.00 = 90.00' });
  expect(amounts(why)).toEqual([
    ['school pays', '30.00'],
    ['Mirembe Okalo pays', '60.00'],
  ]);
});

it('a deposit says of what it is a share', () => {
  const deposit = {
    id: 'deposit',
    kind: 'deposit',
    terms: { of: { as: 'share', share: 5000 }, due: [{ event: 'agreement', days: 7 }] },
  };
  const of = reckon([hours, deposit], { calls: ['rehearsal 60'] });
  const why = of.statement.deposit && depositWhy(of.statement.deposit, of);
  expect(why).toMatchObject({
    amount: '30.00',
    facts: ['of the fee as agreed, before tax is added'],
  });
});

it('monthly parts come to the whole, the last with the rest', () => {
  const monthly = {
    id: 'monthly',
    kind: 'payment',
    terms: { due: [{ event: 'agreement', days: 0, monthEnd: true }], instalments: 7 },
  };
  const of = reckon([hours, monthly], { calls: ['rehearsal 60'] });
  // 60.00 in seven: six of 8.57 are 51.42, and 8.58.
  expect(instalmentsWhy(only(of), of)?.arithmetic).toBe(
    '8.57 + 8.57 + 8.57 + 8.57 + 8.57 + 8.57 + 8.58 = 60.00',
  );
});

it('what cancelling leaves says line by line what is left', () => {
  const notice = {
    id: 'notice',
    kind: 'cancellation',
    terms: { scale: [{ before: 72, owes: { owes: 'nothing' } }], otherwise: { owes: 'share', share: 5000 } },
  };
  const of = reckon([hours, notice], { calls: ['rehearsal 60 on 2026-03-03 at 10:00, agreed'] });
  const left = of.statement.ifCancelled;
  // 49 hours before: half of 60.00.
  expect(left && cancelledWhy(left, of)).toMatchObject({ amount: '30.00' });
});
