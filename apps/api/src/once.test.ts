import { createClient } from '@colla/wire/client';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { enterAgreed } from '../trial/cast.ts';
import { databases, openPractice, type Practice } from '../trial/practice.ts';

describe.each(databases)('a request that is sent again, %s', (_, begin) => {
  let practice: Practice;
  beforeAll(async () => {
    practice = await openPractice(begin);
  });
  afterAll(() => practice.close());

  const post = (path: string, body: unknown, key?: string) =>
    practice.browser.fetch(`/api${path}`, {
      method: 'POST',
      headers: {
        'content-type': 'application/json',
        ...(key === undefined ? {} : { 'idempotency-key': key }),
      },
      body: JSON.stringify(body),
    });
  const typeOf = async (response: Response) => ((await response.json()) as { type: string }).type;
  const names = async () => {
    const { items } = await practice.browser.client.listParties({ query: { limit: 200 } });
    return items.map(({ name }) => name);
  };

  test('is answered as it was, and nothing happens twice', async () => {
    const ask = () => post('/parties', { name: 'Told once' }, '"one-1"');
    const [first, again] = [await ask(), await ask()];
    expect([first.status, again.status]).toEqual([201, 201]);
    expect(await again.json()).toEqual(await first.json());
    expect((await names()).filter((name) => name === 'Told once')).toHaveLength(1);
  });

  test('without a key happens as often as it is sent', async () => {
    await post('/parties', { name: 'Told twice' });
    await post('/parties', { name: 'Told twice' });
    expect((await names()).filter((name) => name === 'Told twice')).toHaveLength(2);
  });

  test('under the key of another request is refused', async () => {
    await post('/parties', { name: 'The first of this key' }, '"one-2"');
    const other = await post('/parties', { name: 'Another' }, '"one-2"');
    expect([other.status, await typeOf(other)]).toEqual([422, '/api/problems/requests/other-request']);
    const elsewhere = await post('/seasons', { name: 'The first of this key' }, '"one-2"');
    expect(elsewhere.status).toBe(422);
    expect(await names()).not.toContain('Another');
  });

  test.each(['one-3', '""', '"a b"', `"${'x'.repeat(201)}"`, '"half'])(
    'under %s, which is no key, is refused',
    async (key) => {
      const answer = await post('/parties', { name: 'No key' }, key);
      expect([answer.status, await typeOf(answer)]).toEqual([400, '/api/problems/requests/no-key']);
      expect(await names()).not.toContain('No key');
    },
  );

  test('after it was refused is looked at anew', async () => {
    const season = { name: 'Spring', from: '2027-03-01', to: '2027-02-01' };
    expect((await post('/seasons', season, '"one-4"')).status).toBe(422);
    expect((await post('/seasons', { ...season, to: '2027-04-01' }, '"one-4"')).status).toBe(201);
  });

  test('at the same moment as itself takes one number, and its twin is answered alike or told to wait', async () => {
    const { client } = practice.browser;
    const { id } = await enterAgreed(client);
    const ask = () => post(`/engagements/${id}/invoices`, { payer: 'payer' }, '"one-5"');
    const answers = await Promise.all([ask(), ask(), ask()]);
    for (const { status } of answers) expect([201, 409]).toContain(status);
    const issued = await ask();
    expect(issued.status).toBe(201);
    const { items } = await client.listInvoices({ query: { limit: 100 } });
    expect(items.map(({ number }) => number)).toEqual([((await issued.json()) as { number: string }).number]);
  });

  test('because its answer was lost takes the money once', async () => {
    const { client, fetch } = practice.browser;
    const { items } = await client.listInvoices({ query: { limit: 1 } });
    const params = { id: items[0]?.id ?? '' };
    let lost = 1;
    const unsteady: typeof fetch = async (...asked) => {
      const answer = await fetch(...asked);
      if (lost-- > 0) throw new TypeError('the connection broke');
      return answer;
    };
    const body = { receivedOn: '2026-10-20', amount: '20.00' };
    await createClient({ fetch: unsteady }).addPayment({ params, body });
    expect(await client.getInvoice({ params })).toMatchObject({ paid: '20.00' });
  });

  test('by a double click takes the money once, and by a second click later takes it twice', async () => {
    const { client } = practice.browser;
    const { items } = await client.listInvoices({ query: { limit: 1 } });
    const params = { id: items[0]?.id ?? '' };
    const twice = createClient({ fetch: practice.browser.fetch });
    const pay = () => twice.addPayment({ params, body: { receivedOn: '2026-10-20', amount: '30.00' } });
    const [one, other] = await Promise.all([pay(), pay()]);
    expect(other.id).toBe(one.id);
    expect(await client.getInvoice({ params })).toMatchObject({ paid: '50.00' });
    await pay();
    expect(await client.getInvoice({ params })).toMatchObject({ paid: '80.00' });
  });
});
