// A quote before it is made.

import { Temporal } from '@colla/calendar';
import type { Call } from '@colla/hours';
import { currency, toDecimal } from '@colla/money';
import { given, readTariff, sentencesOf } from '@colla/rates';
import { granted, Refusal } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { offerOf, openPrices, versionFor } from './offer.ts';

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

  it('is made under the version that has begun by the first call', () => {
    const versions = [{ from: '2026-01-01' }, { from: '2026-09-01' }] as const;
    expect(versionFor(versions, [on('2026-09-10'), on('2026-08-31')])?.from).toBe('2026-01-01');
    expect(versionFor(versions, [on('2026-09-01')])?.from).toBe('2026-09-01');
  });

  it('is made under the newest version where there is no call yet', () => {
    expect(versionFor([{ from: '2026-01-01' }, { from: '2030-09-01' }], [])?.from).toBe('2030-09-01');
  });

  it('for a first call before the tariff begins is under no version until one is named', () => {
    expect(versionFor([{ from: '2026-01-01' }], [on('2025-12-31')])).toBeUndefined();
  });

  it('goes by the earlier instant where two places are on different days', () => {
    const versions = [{ from: '2026-01-01' }, { from: '2026-09-01' }] as const;
    // 08:00 on 1 September in Auckland is 20:00 on 31 August in Universal Time, two hours before the other call.
    const calls = [on('2026-08-31', '23:00', 'Europe/London'), on('2026-09-01', '08:00', 'Pacific/Auckland')];
    expect(versionFor(versions, calls)?.from).toBe('2026-09-01');
  });

  function on(day: string, from = '10:00', zone = 'Europe/London'): Call {
    const start = Temporal.ZonedDateTime.from(`${day}T${from}[${zone}]`);
    const planned = { start, end: start.add({ hours: 1 }) };
    return { id: `${day} ${zone}`, kind: 'rehearsal', place: '', planned, standing: { is: 'agreed' } };
  }

  function totalAt(choices: Record<string, string>): string {
    return toDecimal(granted(offerOf(facts, { written, choices }, now, 'en')).statement.total, pounds);
  }
});
