import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { callAt, enterAgreed, enterPlayed, harbourTariff, zone } from '../trial/cast.ts';
import { databases, OPENED, openPractice, type Practice, problemOf } from '../trial/practice.ts';

type Client = Practice['browser']['client'];
type Asking = (client: Client, id: string) => Promise<unknown>;

const planned = (from: string, until: string, on = '2026-11-20') => ({ on, from, until, zone });
const addCall =
  (of: object): Asking =>
  (client, id) =>
    client.addCall({
      params: { id },
      body: { ...callAt('rehearsal', '2026-11-20', ['10:00', '11:00']), ...of },
    });
const addTariff =
  (...clauses: (typeof harbourTariff.clauses)[number][]): Asking =>
  (client) =>
    client.addTariff({ body: { ...harbourTariff, clauses } });
const firstCall = async (client: Client, id: string) =>
  (await client.getEngagement({ params: { id } })).calls[0]?.id ?? '';
const rehearsals = { id: 'rehearsals', kind: 'hourly', for: { calls: ['rehearsal' as const] } };

const cases: [told: string, asking: Asking, no: object][] = [
  [
    'a call that ends before it starts',
    addCall({ planned: planned('11:00', '10:00') }),
    {
      type: '/api/problems/calendar/ends-before-it-starts',
      pointer: '/planned/until',
      detail:
        'It ends at 10:00, which is not after its start at 11:00 on 2026-11-20. Correct the end, or give the day it ends on if it runs past midnight.',
    },
  ],
  [
    'a call at an hour that clocks skip that night',
    addCall({ planned: planned('01:30', '03:00', '2027-03-28') }),
    {
      type: '/api/problems/calendar/skipped-time',
      pointer: '/planned/from',
      detail:
        '01:30 on 2027-03-28 does not exist in Europe/London: clocks go forward that night. Did you mean 02:30?',
    },
  ],
  [
    'a zone that is none',
    addCall({ planned: { ...planned('10:00', '11:00'), zone: 'Europe/Eastmouth' } }),
    { type: '/api/problems/calendar/unknown-zone', pointer: '/planned/zone' },
  ],
  [
    'a day that is none',
    addCall({ planned: planned('10:00', '11:00', '2026-02-30') }),
    { type: '/api/problems/calendar/no-such-day', detail: expect.stringContaining('“2026-02-30”') },
  ],
  [
    'a call in the year nought',
    addCall({ planned: planned('10:00', '11:00', '0000-06-01') }),
    {
      type: '/api/problems/calendar/no-such-day',
      pointer: '/planned/on',
      detail: '“0000-06-01” is not between 1900 and 2200. Check the year.',
    },
  ],
  [
    'a season in the year nought',
    (client) => client.addSeason({ body: { name: 'First', from: '0000-06-01', to: '0000-07-01' } }),
    { type: '/api/problems/calendar/no-such-day', pointer: '/from' },
  ],
  [
    'an invoice issued on the last day of the calendar',
    (client, id) => client.issueInvoice({ params: { id }, body: { payer: 'payer', issuedOn: '9999-12-31' } }),
    { type: '/api/problems/calendar/no-such-day', pointer: '/issuedOn' },
  ],
  [
    'an agreement priced as of the year nought',
    (client, id) =>
      client.getStatement({ params: { id }, query: { asOf: '0000-06-01T10:00:00+00:00[UTC]' } }),
    { type: '/api/problems/calendar/no-such-day', pointer: '/asOf' },
  ],
  [
    'a preview in a language that is none',
    (client) =>
      client.previewStatement({
        body: { tariff: { ...harbourTariff, version: 1 }, engagement: {}, locale: 'not_a_locale' },
      }),
    { status: 422, pointer: '/locale' },
  ],
  [
    'a language that asks for the figures of another script',
    (client) => client.changeOrganisation({ body: { locale: 'en-GB-u-nu-arab' } }),
    { type: '/api/problems/organisations/unknown-locale', pointer: '/locale' },
  ],
  [
    'a time of day that is none',
    addCall({ planned: planned('25:00', '26:00') }),
    { type: '/api/problems/calendar/no-such-time', pointer: '/planned/from' },
  ],
  [
    'a cost with more decimals than its currency has',
    (client, id) =>
      client.addCost({ params: { id }, body: { on: '2026-11-06', what: 'Part', amount: '12.405' } }),
    {
      type: '/api/problems/money/too-many-decimals',
      pointer: '/amount',
      detail: expect.stringContaining('“12.405” has more decimals than EUR has: EUR has 2 decimals.'),
    },
  ],
  [
    'a cost below zero',
    (client, id) =>
      client.addCost({ params: { id }, body: { on: '2026-11-06', what: 'Part', amount: '-1.00' } }),
    { type: '/api/problems/body/misread', pointer: '/amount' },
  ],
  [
    'a price in a tariff with more decimals than its currency has',
    addTariff({ ...rehearsals, terms: { price: '60.005' } }),
    { pointer: '/clauses/0/terms/price', detail: expect.stringContaining('more decimals than EUR has') },
  ],
  [
    'a clause out of range',
    addTariff({ ...rehearsals, terms: { price: '60.00', increment: 0 } }),
    { type: '/api/problems/rates/malformed-tariff', pointer: '/clauses/0/terms/increment' },
  ],
  [
    'two clauses that contradict',
    addTariff(
      { ...rehearsals, terms: { price: '60.00' } },
      { ...rehearsals, id: 'others', terms: { price: '70.00' } },
    ),
    {
      type: '/api/problems/rates/contradiction',
      pointer: '/clauses/1',
      detail: expect.stringContaining('“rehearsals” and “others”'),
    },
  ],
  [
    'a clause of an unknown kind',
    addTariff({ ...rehearsals, kind: 'moonlight', terms: {} }),
    { type: '/api/problems/rates/unknown-kind', pointer: '/clauses/0/kind' },
  ],
  [
    'a word that has no place in the question',
    addCall({ colour: 'blue' }),
    {
      status: 422,
      pointer: '/colour',
      detail: '“colour” is not known here; remove it, or correct its name.',
    },
  ],
  [
    'a field that is missing',
    (client) => client.addSeason({ body: { name: 'Autumn', from: '2026-09-01' } as never }),
    { status: 422, pointer: '/to', detail: '“to” is missing; give text in quotes.' },
  ],
  [
    'a day written in another way',
    (client) => client.addSeason({ body: { name: 'Autumn', from: '1 September', to: '2026-12-31' } }),
    { pointer: '/from', detail: '“from” is not a day; write it as 2026-03-14.' },
  ],
  [
    'a season that ends before it begins',
    (client) => client.addSeason({ body: { name: 'Autumn', from: '2026-12-31', to: '2026-09-01' } }),
    { type: '/api/problems/calendar/season-ends-early', pointer: '/to' },
  ],
  [
    'a payer who was never entered',
    (client, id) =>
      client.changeEngagement({
        params: { id },
        body: { payers: { payer: '018f0000-0000-7000-8000-000000000000' } },
      }),
    { type: '/api/problems/engagements/unknown-party', pointer: '/payers/payer' },
  ],
  [
    'an invoice to a role that nobody has',
    (client, id) => client.issueInvoice({ params: { id }, body: { payer: 'school' } }),
    { status: 409, type: '/api/problems/invoicing/nobody-pays', pointer: '/payer' },
  ],
  [
    'a call marked played before it begins',
    async (client, id) => {
      const body = { on: '2026-11-02', from: '10:00', until: '11:00', zone };
      await client.playCall({ params: { id, call: await firstCall(client, id) }, body });
    },
    {
      status: 409,
      type: '/api/problems/engagements/not-yet',
      pointer: '/from',
      detail: 'The rehearsal begins on 2 November at 10:00. Mark it played once it has begun.',
    },
  ],
  [
    'a call marked missed before it begins',
    async (client, id) => {
      const body = { by: 'payer' as const, reason: 'forgotten' as const };
      await client.missCall({ params: { id, call: await firstCall(client, id) }, body });
    },
    {
      status: 409,
      type: '/api/problems/engagements/not-yet',
      detail: 'The rehearsal begins on 2 November at 10:00. Mark it missed once it has begun.',
    },
  ],
  [
    'a journey of no distance',
    (client, id) =>
      client.addLeg({
        params: { id },
        body: { on: '2026-11-06', from: 'Home', to: 'Eastmouth', distance: 'far', unit: 'km' },
      }),
    { type: '/api/problems/travel/no-distance', pointer: '/distance' },
  ],
  [
    'a currency that is none',
    (client) => client.changeOrganisation({ body: { currency: 'QQQ' } }),
    { type: '/api/problems/money/unknown-currency', pointer: '/currency' },
  ],
  [
    'a language that is none',
    (client) => client.changeOrganisation({ body: { locale: 'klavier' } }),
    { type: '/api/problems/organisations/unknown-locale', pointer: '/locale' },
  ],
];

describe.each(databases)('what cannot be, %s', (_, begin) => {
  let practice: Practice;
  let id: string;
  beforeAll(async () => {
    practice = await openPractice(begin);
    ({ id } = await enterAgreed(practice.browser.client));
  });
  beforeEach(() => practice.setClock(OPENED));
  afterAll(() => practice.close());

  const everything = async ({ client }: Practice['browser']) => [
    await client.getOrganisation({}),
    await client.getEngagement({ params: { id } }),
    await client.listTariffs({}),
    await client.listSeasons({}),
  ];

  test.each(cases)('%s gets one clear sentence and changes nothing', async (_, asking, no) => {
    const before = await everything(practice.browser);
    const problem = await problemOf(asking(practice.browser.client, id));
    expect(problem).toMatchObject(no);
    expect(problem.detail).toMatch(/\.$|\?$/);
    expect(await everything(practice.browser)).toEqual(before);
  });

  test('every field that is wrong is listed, the first of them as the problem', async () => {
    const call = callAt('rehearsal', '2026-11-20', ['10:00', 'noon']);
    const problem = await problemOf(
      practice.browser.client.addCall({ params: { id }, body: { ...call, kind: 'waltz' as never } }),
    );
    expect(problem.errors?.map(({ pointer }) => pointer)).toEqual(['/kind', '/planned/until']);
    expect(problem.detail).toContain('“kind” is none of rehearsal, lesson, coaching');
  });

  test('10 MB of JSON is refused in one sentence', async () => {
    const body = JSON.stringify({ note: 'x'.repeat(10_000_000) });
    const headers = { 'content-type': 'application/json' };
    const response = await practice.browser.fetch(`/api/engagements/${id}`, {
      method: 'PATCH',
      headers,
      body,
    });
    expect(response.status).toBe(413);
    expect(await response.json()).toMatchObject({
      type: '/api/problems/body/too-large',
      detail: 'What was sent is larger than 1 MB, the most that is read at once. Send it in smaller parts.',
    });
  });

  test.each([
    ['{"name": x}', 10],
    ['{"name": "Autumn",}', 19],
    ['[1, 2,, 3]', 7],
    ['{"name": "Autumn"', 18],
    ["{'name': 1}", 2],
    ['{"name": tru}', 13],
  ])('JSON that goes wrong is refused with the place where it does: %s', async (body, position) => {
    const headers = { 'content-type': 'application/json' };
    const response = await practice.browser.fetch('/api/seasons', { method: 'POST', headers, body });
    expect(response.status).toBe(400);
    expect(response.headers.get('content-type')).toContain('application/problem+json');
    expect(await response.json()).toMatchObject({
      type: '/api/problems/body/malformed',
      facts: { position },
    });
  });

  test('what is not said to be JSON is not read as JSON', async () => {
    const response = await practice.browser.fetch('/api/seasons', { method: 'POST', body: 'name=Autumn' });
    expect(response.status).toBe(415);
  });

  test.each([
    '/api/nothing',
    '/api/engagements/none',
    '/api/engagements/018f0000-0000-7000-8000-000000000000',
    '/api/invoices/018f0000-0000-7000-8000-000000000000/pdf',
    '/api/invoices/..%2f..%2f..%2fetc%2fpasswd/pdf',
    '/api/invoices/..%5c..%5cbooks/pdf',
    '/api/parties/%00',
  ])('nothing is found at %s, and a problem says so', async (path) => {
    const response = await practice.browser.fetch(path);
    expect(response.status).toBe(404);
    expect(response.headers.get('content-type')).toContain('application/problem+json');
  });

  test('an address that is not readable is refused', async () => {
    const response = await practice.browser.fetch('/api/parties/%E0%A4%A');
    expect(response.status).toBe(400);
  });

  test('a title full of path signs names no path in the file of its invoice', async () => {
    const { client, fetch } = practice.browser;
    const { id } = await enterPlayed(practice, '../../../etc/“passwd”\r\nX: y');
    const invoice = await client.issueInvoice({ params: { id }, body: { payer: 'payer' } });
    const response = await fetch(`/api/invoices/${invoice.id}/pdf`);
    expect(response.status).toBe(200);
    expect(response.headers.get('content-disposition')).toBe(
      `inline; filename="invoice-${invoice.number}.pdf"`,
    );
  });

  test('a payment larger than what is owed is offered as credit, and kept as credit once that is wanted', async () => {
    const { client } = practice.browser;
    const { id } = await enterPlayed(practice);
    const invoice = await client.issueInvoice({ params: { id }, body: { payer: 'payer' } });
    const params = { id: invoice.id };
    const body = { receivedOn: '2026-11-06', amount: '350.00' };
    expect(await problemOf(client.addPayment({ params, body }))).toMatchObject({
      status: 409,
      type: '/api/problems/invoicing/more-than-owed',
      detail: `Only 300.00 is owed on invoice ${invoice.number}. Keep the other 50.00 as credit, or correct the amount.`,
      pointer: '/amount',
      facts: { owed: '300.00', over: '50.00' },
    });
    expect(await client.getInvoice({ params })).toMatchObject({ paid: '0.00', is: 'open' });
    const payment = await client.addPayment({ params, body: { ...body, keepCredit: true } });
    expect(payment).toMatchObject({ amount: '350.00', credit: '50.00' });
    expect(payment.allocations).toEqual([{ invoice: invoice.id, amount: '300.00' }]);
  });

  test('nothing is invoiced twice', async () => {
    const { client } = practice.browser;
    const { id } = await enterPlayed(practice);
    await client.issueInvoice({ params: { id }, body: { payer: 'payer' } });
    const again = client.issueInvoice({ params: { id }, body: { payer: 'payer' } });
    expect(await problemOf(again)).toMatchObject({
      status: 409,
      type: '/api/problems/invoicing/nothing-to-invoice',
    });
  });
});
