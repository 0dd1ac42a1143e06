// An invented soloist, school and tariff that the tests of the API share, entered as a user would.

import type { Client } from '@colla/wire/client';
import type { Practice } from './practice.ts';

type TariffInput = Parameters<Client['addTariff']>[0]['body'];

/** Rehearsals by the hour, recitals at a fee, the way, costs, half for what falls late, a fortnight to pay. */
export const harbourTariff: TariffInput = {
  name: 'Harbour tariff',
  currency: 'EUR',
  from: '2026-01-01',
  clauses: [
    {
      id: 'rehearsals',
      kind: 'hourly',
      for: { calls: ['rehearsal'] },
      terms: { price: '60.00', minimum: 60, increment: 15 },
    },
    { id: 'recitals', kind: 'fixed', for: { calls: ['recital'] }, terms: { price: '180.00' } },
    {
      id: 'late',
      kind: 'cancellation',
      terms: {
        scale: [{ before: 48, owes: { owes: 'nothing' } }],
        otherwise: { owes: 'share', share: 5000 },
      },
    },
    { id: 'way', kind: 'travel', terms: { perUnit: '0.45' } },
    { id: 'spent', kind: 'cost', terms: {} },
    { id: 'due', kind: 'payment', terms: { due: [{ event: 'invoice', days: 14 }] } },
  ],
};

export const zone = 'Europe/London';

/** A call at the harbour school: `on` a day, `from` and `until` on its clock. */
export function callAt(kind: 'rehearsal' | 'recital', on: string, [from, until]: [string, string]) {
  return { kind, place: 'Harbour School, hall', planned: { on, from, until, zone } };
}

/** Two rehearsals and a recital, asked for by the school for its soloist. */
export async function enterInquiry(client: Client, title = 'Autumn recital') {
  const soloist = await client.addParty({ body: { name: 'Sanna Ilves' } });
  const school = await client.addParty({
    body: { name: 'Harbour School of Music', address: ['1 Quay Row', 'Eastmouth'], reference: 'PO 4417' },
  });
  return client.addEngagement({
    body: {
      title,
      soloistParty: soloist.id,
      institutionParty: school.id,
      payers: { payer: school.id },
      calls: [
        callAt('rehearsal', '2026-11-02', ['10:00', '11:00']),
        callAt('rehearsal', '2026-11-04', ['10:00', '11:00']),
        callAt('recital', '2026-11-06', ['19:30', '20:30']),
      ],
      programme: [{ composer: 'Invented', title: 'Three Songs of the Quay', minutes: 12 }],
    },
  });
}

/** The inquiry, quoted by the harbour tariff and agreed. */
export async function enterAgreed(client: Client, title?: string) {
  const { id } = await enterInquiry(client, title);
  const tariff = await client.addTariff({ body: harbourTariff });
  const params = { id };
  await client.quoteEngagement({ params, body: { tariff: tariff.id, validUntil: '2026-10-31' } });
  return client.agreeEngagement({ params, body: { acceptedBy: 'Sanna Ilves' } });
}

/** An hour after the last call of the inquiry has ended. */
export const AFTERWARDS = '2026-11-06T21:30:00Z';

/**
 * The agreed engagement with every call played as planned: 60.00, 60.00 and 180.00 are owed. The clock stands after
 * the last of them from then on.
 */
export async function enterPlayed({ browser: { client }, setClock }: Practice, title?: string) {
  const { id, calls } = await enterAgreed(client, title);
  setClock(AFTERWARDS);
  for (const call of calls) {
    const [on = '', rest = ''] = call.start.split('T');
    const planned = { on, from: rest.slice(0, 5), until: call.end.slice(11, 16), zone };
    await client.playCall({ params: { id, call: call.id }, body: planned });
  }
  return client.getEngagement({ params: { id } });
}
