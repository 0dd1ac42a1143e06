import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { AFTERWARDS, callAt, enterAgreed, enterPlayed, harbourTariff, zone } from '../trial/cast.ts';
import { databases, OPENED, openPractice, type Practice, problemOf } from '../trial/practice.ts';

describe.each(databases)('billing, %s', (_, begin) => {
  let practice: Practice;
  beforeAll(async () => {
    practice = await openPractice(begin);
  });
  beforeEach(() => practice.setClock(OPENED));
  afterAll(() => practice.close());

  test('a rehearsal found to be longer after the invoice is billed by its difference', async () => {
    const { client } = practice.browser;
    const { id, calls } = await enterPlayed(practice);
    await client.issueInvoice({ params: { id }, body: { payer: 'payer' } });
    // Seventy-five minutes in place of sixty: one quarter hour of 15.00 more.
    const times = { on: '2026-11-02', from: '10:00', until: '11:15', zone };
    await client.playCall({ params: { id, call: calls[0]?.id ?? '' }, body: times });
    expect((await client.getStatement({ params: { id } })).toInvoice).toEqual([
      { payer: 'payer', total: '15.00' },
    ]);
    const further = await client.issueInvoice({ params: { id }, body: { payer: 'payer' } });
    expect(further.total).toBe('15.00');
    expect(further.lines).toHaveLength(1);
  });

  test('an invoice is overdue from the day after it was due, on the organisation’s own calendar', async () => {
    const { client } = practice.browser;
    const { id } = await enterAgreed(client);
    const invoice = await client.issueInvoice({ params: { id }, body: { payer: 'payer' } });
    const params = { id: invoice.id };
    practice.setClock('2026-11-03T23:59:00Z');
    expect(await client.getInvoice({ params })).toMatchObject({
      issuedOn: '2026-10-20',
      dueOn: '2026-11-03',
      is: 'open',
    });
    practice.setClock('2026-11-04T00:00:00Z');
    expect(await client.getInvoice({ params })).toMatchObject({ is: 'overdue', owed: '300.00' });
  });

  test('of three parts the school pays two and the family one, and both must pay before it is settled', async () => {
    const { client } = practice.browser;
    const among = [
      { payer: 'school', parts: 2 },
      { payer: 'family', parts: 1 },
    ];
    const clauses = [
      { id: 'fee', kind: 'fixed', terms: { price: '100.00' } },
      { id: 'shares', kind: 'split', terms: { among } },
    ];
    const tariff = await client.addTariff({ body: { ...harbourTariff, clauses } });
    const [school, family] = [
      await client.addParty({ body: { name: 'Harbour School of Music' } }),
      await client.addParty({ body: { name: 'Family Ilves' } }),
    ];
    const { id, calls } = await client.addEngagement({
      body: {
        title: 'Shared recital',
        payers: { school: school.id, family: family.id },
        calls: [callAt('recital', '2026-11-06', ['19:30', '20:30'])],
      },
    });
    const params = { id };
    await client.quoteEngagement({ params, body: { tariff: tariff.id, validUntil: '2026-10-31' } });
    await client.agreeEngagement({ params, body: { acceptedBy: 'Family Ilves' } });
    practice.setClock(AFTERWARDS);
    const times = { on: '2026-11-06', from: '19:30', until: '20:30', zone };
    await client.playCall({ params: { id, call: calls[0]?.id ?? '' }, body: times });

    for (const [payer, amount, stage] of [
      ['school', '66.67', 'agreed'],
      ['family', '33.33', 'settled'],
    ] as const) {
      const invoice = await client.issueInvoice({ params, body: { payer } });
      expect(invoice.total).toBe(amount);
      const pay = { receivedOn: '2026-11-06', amount };
      await client.addPayment({ params: { id: invoice.id }, body: pay });
      expect((await client.getEngagement({ params })).stage).toBe(stage);
    }
  });

  test('numbers run on without a gap, whatever was refused in between', async () => {
    const { client } = practice.browser;
    const { id } = await enterPlayed(practice);
    const numbers = async () => (await client.listInvoices({})).items.map(({ number }) => number).sort();
    const before = (await numbers()).length;
    await problemOf(client.issueInvoice({ params: { id }, body: { payer: 'constructor' } }));
    await client.issueInvoice({ params: { id }, body: { payer: 'payer' } });
    await problemOf(client.issueInvoice({ params: { id }, body: { payer: 'payer' } }));
    const expected = Array.from({ length: before + 1 }, (_, at) => `2026-${String(at + 1).padStart(4, '0')}`);
    expect(await numbers()).toEqual(expected);
  });
});
