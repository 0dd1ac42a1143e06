// A quote before it is made.

import { Temporal } from '@colla/calendar';
import { currency, toDecimal } from '@colla/money';
import { given, readTariff, sentencesOf } from '@colla/rates';
import { granted, Refusal } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { offerOf, openPrices } from './offer.ts';

const pounds = granted(currency('GBP'));
const tariff = granted(
  readTariff({
    name: 'Agreed fees',
    currency: 'GBP',
    version: 1,
    from: '2026-01-01',
    clauses: [
      {
        id: 'recital',
        kind: 'fixed',
        for: { calls: ['recital'] },
        terms: { price: '300.00', band: { from: '250.00', to: '400.00' } },
      },
      { id: 'hour', kind: 'hourly', for: { calls: ['rehearsal'] }, terms: { price: '40.00' } },
    ],
  }),
);
const written = { ...tariff.written, clauses: [...tariff.written.clauses] };
const version = { version: 1, from: '2026-01-01', written, sentences: sentencesOf(tariff, 'en') };
const facts = given({ calls: ['rehearsal 60', 'recital 80'], offered: true }, pounds);
const now = Temporal.ZonedDateTime.from('2026-02-01T09:00[Europe/London]');

describe('a quote', () => {
  it('asks for the price of the recital, which has a band, and not for the hour, which has none', () => {
    expect(openPrices(version)).toMatchObject([
      { clause: 'recital', price: '300.00', from: '250.00', to: '400.00' },
    ]);
  });

  it('at 350.00 for the recital comes to 390.00 with an hour of rehearsal', () => {
    expect(totalAt({ recital: '350.00' })).toBe('390.00');
  });

  it('at 450.00 lies outside the band and is refused, naming the clause', () => {
    const offer = offerOf(facts, { written, choices: { recital: '450.00' } }, now, 'en');
    expect(offer).toBeInstanceOf(Refusal);
    expect(offer).toMatchObject({ facts: { clause: 'recital' } });
  });

  function totalAt(choices: Record<string, string>): string {
    return toDecimal(granted(offerOf(facts, { written, choices }, now, 'en')).statement.total, pounds);
  }
});
