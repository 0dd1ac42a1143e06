import { currency, fromDecimal } from '@colla/money';
import { granted } from '@colla/refusal';
import { type Client, createClient } from '@colla/wire/client';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { databases, openPractice, type Practice, problemOf } from '../trial/practice.ts';

describe.each(databases)('the example season, %s', (_, begin) => {
  let practice: Practice;
  let id: string;
  beforeAll(async () => {
    practice = await openPractice(begin);
    ({ id } = await practice.browser.client.openExample({}));
  });
  afterAll(() => practice.close());

  test('it opens with one click, at every stage of the trade', async () => {
    const { items } = await practice.browser.client.listEngagements({ query: { limit: 200 } });
    expect([...new Set(items.map(({ stage }) => stage))].sort()).toEqual(
      expect.arrayContaining(['agreed', 'cancelled', 'declined', 'inquiry', 'quoted', 'settled']),
    );
  });

  test('its score shows several staves with money owed and weeks with hours', async () => {
    const score = await practice.browser.client.getSeasonScore({ params: { id } });
    expect(score.staves.length).toBeGreaterThanOrEqual(5);
    expect(score.staves.some(({ overdue }) => overdue > 0)).toBe(true);
    expect(score.weeks).toHaveLength(26);
  });

  test('every engagement with terms has a statement that its payers share out, with no call left without a price', async () => {
    const { client } = practice.browser;
    const euro = granted(currency('EUR'));
    const { items } = await client.listEngagements({ query: { limit: 200 } });
    const withTerms = items.filter(({ stage }) => !['inquiry', 'declined', 'lapsed'].includes(stage));
    for (const { id } of withTerms) {
      const { statement } = await client.getStatement({ params: { id } });
      expect(statement.unpriced).toEqual([]);
      const cents = statement.payers.map(({ total }) => granted(fromDecimal(total, euro)));
      expect(cents.reduce((sum, part) => sum + part, 0n)).toBe(granted(fromDecimal(statement.total, euro)));
    }
  });

  test('every invoice has its document', async () => {
    const { client, fetch } = practice.browser;
    const { items } = await client.listInvoices({ query: { limit: 200 } });
    for (const { id } of items) expect((await fetch(`/api/invoices/${id}/pdf`)).status).toBe(200);
  });

  test('it does not open in a book that holds something', async () => {
    expect(await problemOf(practice.browser.client.openExample({}))).toMatchObject({
      status: 409,
      type: '/api/problems/example/not-empty',
    });
  });

  test('opened in two tabs at once in an empty book, it is there once', async () => {
    const empty = await openPractice(begin);
    const { client, fetch } = empty.browser;
    const otherTab = createClient({ fetch });
    const open = (tab: Client) =>
      tab.openExample({}).then(
        () => 'opened',
        () => 'refused',
      );
    expect((await Promise.all([open(client), open(otherTab)])).sort()).toEqual(['opened', 'refused']);
    expect((await client.listSeasons({ query: {} })).items).toHaveLength(1);
    await empty.close();
  });
});
