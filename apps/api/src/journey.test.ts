import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { AFTERWARDS, callAt, enterAgreed, enterInquiry, harbourTariff, zone } from '../trial/cast.ts';
import { databases, OPENED, openPractice, type Practice, problemOf } from '../trial/practice.ts';

describe.each(databases)('an engagement from inquiry to paid, %s', (_, begin) => {
  let practice: Practice;
  beforeAll(async () => {
    practice = await openPractice(begin);
  });
  afterAll(() => practice.close());

  test('an inquiry is quoted, agreed, played, invoiced in full, paid and settled', async () => {
    const { client } = practice.browser;
    practice.setClock(OPENED);
    const { id } = await enterInquiry(client);
    const tariff = await client.addTariff({ body: harbourTariff });
    const params = { id };

    const quoted = await client.quoteEngagement({
      params,
      body: { tariff: tariff.id, validUntil: '2026-10-31' },
    });
    expect(quoted.stage).toBe('quoted');
    expect(quoted.quote?.validUntil).toBe('2026-10-31T23:59:59.999+00:00[Europe/London]');
    const offered = await client.getStatement({ params });
    expect(offered.statement.total).toBe('300.00');
    expect(offered.toInvoice).toEqual([]);

    const agreed = await client.agreeEngagement({ params, body: { acceptedBy: 'Sanna Ilves' } });
    expect(agreed.calls.map(({ standing }) => standing.is)).toEqual(['agreed', 'agreed', 'agreed']);
    const [first, second, recital] = agreed.calls.map(({ id }) => id);

    practice.setClock(AFTERWARDS);
    // Seventy minutes are five quarter hours: 75.00.
    await client.playCall({
      params: { id, call: first ?? '' },
      body: { on: '2026-11-02', from: '10:00', until: '11:10', zone },
    });
    // Word a day before, within 48 hours: half of 60.00.
    await client.cancelCall({
      params: { id, call: second ?? '' },
      body: { on: '2026-11-03', at: '12:00', zone, by: 'payer', reason: 'other' },
    });
    await client.playCall({
      params: { id, call: recital ?? '' },
      body: { on: '2026-11-06', from: '19:30', until: '20:35', zone },
    });
    // 24.5 km at 0.45 are 11.025, rounded to 11.03.
    await client.addLeg({
      params,
      body: { on: '2026-11-06', from: 'Home', to: 'Eastmouth', distance: '24.5', unit: 'km' },
    });
    await client.addCost({ params, body: { on: '2026-11-06', what: 'Hire of a part', amount: '12.40' } });

    practice.setClock('2026-11-07T10:00:00Z');
    const { statement, toInvoice } = await client.getStatement({ params });
    expect(statement.lines.map(({ clause, amount }) => [clause, amount])).toEqual(
      expect.arrayContaining([
        ['rehearsals', '75.00'],
        ['late', '30.00'],
        ['recitals', '180.00'],
        ['way', '11.03'],
        ['spent', '12.40'],
      ]),
    );
    expect(statement.total).toBe('308.43');
    expect(toInvoice).toEqual([{ payer: 'payer', total: '308.43' }]);

    const invoice = await client.issueInvoice({ params, body: { payer: 'payer' } });
    expect(invoice).toMatchObject({
      number: '2026-0001',
      total: '308.43',
      issuedOn: '2026-11-07',
      dueOn: '2026-11-21',
      is: 'open',
      to: { name: 'Harbour School of Music', reference: 'PO 4417' },
    });

    practice.setClock('2026-11-10T09:00:00Z');
    const pay = (amount: string) =>
      client.addPayment({ params: { id: invoice.id }, body: { receivedOn: '2026-11-10', amount } });
    await pay('100.00');
    expect(await client.getInvoice({ params: { id: invoice.id } })).toMatchObject({
      paid: '100.00',
      owed: '208.43',
      is: 'part paid',
    });
    expect((await client.getEngagement({ params })).stage).toBe('agreed');
    await pay('208.43');

    const settled = await client.getEngagement({ params });
    expect(settled.stage).toBe('settled');
    expect(settled.invoices.map(({ is }) => is)).toEqual(['paid']);
    expect(settled.payments.map(({ amount }) => amount).sort()).toEqual(['100.00', '208.43']);
    expect(Object.values(settled.parties).sort()).toEqual(['Harbour School of Music', 'Sanna Ilves']);
  });

  test('the season shows its calls, its hours and that nothing is owed', async () => {
    const { client } = practice.browser;
    const season = await client.addSeason({
      body: { name: 'Autumn 2026', from: '2026-09-01', to: '2026-12-31' },
    });
    const { staves, weeks } = await client.getSeasonScore({ params: { id: season.id } });
    expect(staves.map(({ name, marks }) => [name, marks.map(({ is }) => is)])).toEqual([
      ['Harbour School of Music', ['played', 'cancelled', 'played']],
    ]);
    expect(staves[0]?.money).toEqual([{ currency: 'EUR', toInvoice: '0.00', owed: '0.00', overdue: '0.00' }]);
    // 70 minutes of rehearsal and 65 of recital.
    expect(weeks.find(({ monday }) => monday === '2026-11-02')?.played).toBe(135);
  });

  test('the PDF of the invoice says its number and its total, under a name made of the number', async () => {
    const { client, fetch } = practice.browser;
    const [invoice] = (await client.listInvoices({})).items;
    const response = await fetch(`/api/invoices/${invoice?.id}/pdf`);
    expect(response.headers.get('content-type')).toBe('application/pdf');
    expect(response.headers.get('content-disposition')).toBe('inline; filename="invoice-2026-0001.pdf"');
    const text = await textOf(await response.arrayBuffer());
    expect(text).toContain('2026-0001');
    expect(text).toContain('308.43');
  });

  test('a preview of the same facts is the statement that is kept, to the letter', async () => {
    const { client } = practice.browser;
    practice.setClock(OPENED);
    const { id, calls } = await enterAgreed(client);
    const asOf = '2026-10-25T12:00:00+00:00[Europe/London]';
    const kept = await client.getStatement({ params: { id }, query: { asOf } });
    const planned = [
      callAt('rehearsal', '2026-11-02', ['10:00', '11:00']),
      callAt('rehearsal', '2026-11-04', ['10:00', '11:00']),
      callAt('recital', '2026-11-06', ['19:30', '20:30']),
    ];
    const preview = await client.previewStatement({
      body: {
        tariff: { ...harbourTariff, version: 1 },
        engagement: { calls: planned.map((call, at) => ({ ...call, id: calls[at]?.id })) },
        asOf,
      },
    });
    expect(preview.statement).toEqual(kept.statement);
    expect(preview.sentences).toEqual(kept.sentences);
    expect(kept.statement.ifCancelled?.total).toBe('0.00');
  });

  test('an agreement keeps its tariff and sentences when the tariff gets a new version', async () => {
    const { client } = practice.browser;
    const { agreement } = await enterAgreed(client);
    const tariffs = await client.listTariffs({});
    const newer = { ...harbourTariff, from: '2026-10-21', clauses: harbourTariff.clauses.slice(0, 2) };
    for (const { id } of tariffs.items) await client.addTariffVersion({ params: { id }, body: newer });
    const frozen = await client.getAgreement({ params: { id: agreement?.id ?? '' } });
    expect(frozen).toEqual(agreement);
    expect(frozen.tariff.version).toBe(1);
    expect(frozen.sentences).toHaveLength(6);
  });

  test('what is agreed cannot be quoted again', async () => {
    const { client } = practice.browser;
    const { id } = await enterAgreed(client);
    const tariff = await client.addTariff({ body: harbourTariff });
    const again = client.quoteEngagement({
      params: { id },
      body: { tariff: tariff.id, validUntil: '2026-10-31' },
    });
    expect(await problemOf(again)).toMatchObject({
      status: 409,
      type: '/api/problems/engagements/illegal-move',
      detail: '“Autumn recital” is agreed and cannot be quoted: that takes one that is an inquiry or quoted.',
    });
  });
});

async function textOf(pdf: ArrayBuffer): Promise<string> {
  const document = await getDocument({ data: new Uint8Array(pdf) }).promise;
  const content = await (await document.getPage(1)).getTextContent();
  return content.items.map((item) => ('str' in item ? item.str : '')).join(' ');
}
