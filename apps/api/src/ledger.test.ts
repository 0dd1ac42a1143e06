import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { enterAgreed, enterInquiry, harbourTariff } from '../trial/cast.ts';
import { databases, OPENED, openPractice, type Practice, problemOf } from '../trial/practice.ts';

describe.each(databases)('the ledger behind the money, %s', (_, begin) => {
  let practice: Practice;
  beforeAll(async () => {
    practice = await openPractice(begin);
  });
  beforeEach(() => practice.setClock(OPENED));
  afterAll(() => practice.close());

  const client = () => practice.browser.client;
  const issue = (id: string, more: object = {}) =>
    client().issueInvoice({ params: { id }, body: { payer: 'payer', ...more } });

  test('the books keep their currency once something is posted in them', async () => {
    const { id } = await enterAgreed(client());
    await issue(id);
    expect(await problemOf(client().changeOrganisation({ body: { currency: 'GBP' } }))).toMatchObject({
      status: 409,
      type: '/api/problems/organisations/books-begun',
      pointer: '/currency',
    });
    expect((await client().getOrganisation()).currency).toBe('EUR');
  });

  test('what is in another currency than the books asks for its rate, and for where that is from', async () => {
    const { id } = await agreedInPounds();
    expect(await problemOf(issue(id))).toMatchObject({
      status: 422,
      type: '/api/problems/invoicing/no-rate',
      pointer: '/rate',
    });
    const rate = { rate: '1.15', on: '2026-10-20', source: '' };
    expect(await problemOf(issue(id, { rate }))).toMatchObject({
      type: '/api/problems/ledger/rate-without-source',
      pointer: '/rate/source',
    });
    const from = { ...rate, source: 'the bank of the place' };
    const invoice = await issue(id, { rate: from });
    // Two hours at 60.00 and a recital at 180.00; none of the refused took a number.
    expect([invoice.currency, invoice.total]).toEqual(['GBP', '300.00']);
    const params = { id: invoice.id };
    const paid = { receivedOn: '2026-10-20', amount: '100.00' };
    expect(await problemOf(client().addPayment({ params, body: paid }))).toMatchObject({ pointer: '/rate' });
    await client().addPayment({ params, body: { ...paid, rate: from } });
    expect(await client().getInvoice({ params })).toMatchObject({ paid: '100.00', owed: '200.00' });
  });

  test('nothing is issued or received on a day of a closed year', async () => {
    const { id } = await enterAgreed(client());
    practice.setClock('2026-11-10T09:00:00Z');
    const before = await issue(id);
    await client().changeOrganisation({ body: { closedThrough: '2026-11-09' } });
    const params = { id: before.id };
    const early = { receivedOn: '2026-11-09', amount: '10.00' };
    expect(await problemOf(client().addPayment({ params, body: early }))).toMatchObject({
      status: 409,
      type: '/api/problems/ledger/closed-year',
      detail:
        'The books are closed up to 2026-11-09, and 2026-11-09 is within that. Give a day from 2026-11-10 on.',
    });
    expect(await client().getInvoice({ params })).toMatchObject({ paid: '0.00' });
    await client().addPayment({ params, body: { ...early, receivedOn: '2026-11-10' } });
    expect(
      await problemOf(client().changeOrganisation({ body: { closedThrough: '2026-11-10' } })),
    ).toMatchObject({
      status: 422,
      type: '/api/problems/organisations/year-not-over',
      pointer: '/closedThrough',
    });
    const open = await client().changeOrganisation({ body: { closedThrough: '' } });
    expect(open.closedThrough).toBeUndefined();
  });

  async function agreedInPounds() {
    const asked = await enterInquiry(client(), 'A recital across the water');
    const tariff = await client().addTariff({ body: { ...harbourTariff, currency: 'GBP' } });
    const { id, title, payers, calls } = asked;
    const inPounds = await client().addEngagement({
      body: {
        ...{ title, payers, currency: 'GBP' },
        calls: calls.map(({ kind, place, start, end }) => ({
          ...{ kind, place },
          planned: {
            on: start.slice(0, 10),
            from: start.slice(11, 16),
            until: end.slice(11, 16),
            zone: 'Europe/London',
          },
        })),
      },
    });
    expect(inPounds.id).not.toBe(id);
    const params = { id: inPounds.id };
    await client().quoteEngagement({ params, body: { tariff: tariff.id, validUntil: '2026-10-31' } });
    return client().agreeEngagement({ params, body: { acceptedBy: 'Sanna Ilves' } });
  }
});
