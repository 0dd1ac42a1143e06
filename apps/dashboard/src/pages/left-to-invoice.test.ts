// What is left to invoice is the statement less the invoices.

import { Temporal } from '@colla/calendar';
import { currency } from '@colla/money';
import { given, readTariff, sentencesOf, statement } from '@colla/rates';
import { granted } from '@colla/refusal';
import { type InvoiceJson, showStatement } from '@colla/wire';
import { expect, it } from 'vitest';
import type { Reckoned } from '../features/statements/reckoning.ts';
import { leftWhy } from './left-to-invoice.ts';

const pounds = granted(currency('GBP'));
const clauses = [{ id: 'hours', kind: 'hourly', terms: { price: '60.00' } }];
const tariff = granted(readTariff({ name: 'Any', currency: 'GBP', version: 1, from: '2026-01-01', clauses }));
const asOf = Temporal.ZonedDateTime.from('2026-03-09T09:00[Europe/London]');
const facts = given({ calls: ['rehearsal 60', 'rehearsal 90'] }, pounds);
const of: Reckoned = {
  statement: showStatement(statement(facts, { tariff, locale: 'en-GB' }, asOf)),
  sentences: sentencesOf(tariff, 'en-GB'),
  callNames: {},
  payerNames: { payer: 'Mirembe Okalo' },
};
const asked = (payer: string, total: string) =>
  ({ id: payer, number: '2026-0001', payer, total }) as InvoiceJson;

it('of 150.00 of which 60.00 was asked for, 90.00 is left; another payer’s invoice lessens nothing', () => {
  const why = leftWhy({ payer: 'payer', total: '90.00' }, of, [
    asked('payer', '60.00'),
    asked('school', '30.00'),
  ]);
  expect(why).toMatchObject({
    what: 'Mirembe Okalo: still to invoice',
    arithmetic: '150.00 \u2212 60.00 = 90.00',
  });
});

it('where 200.00 was asked for, 50.00 was beyond what is owed', () => {
  const why = leftWhy({ payer: 'payer', total: '-50.00' }, of, [asked('payer', '200.00')]);
  expect(why).toMatchObject({
    what: 'Mirembe Okalo: invoiced beyond what is owed now',
    arithmetic: '150.00 \u2212 200.00 = \u221250.00',
  });
});
