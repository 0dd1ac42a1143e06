import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { AFTERWARDS, enterInquiry } from '../trial/cast.ts';
import { databases, OPENED, openPractice, type Practice, problemOf } from '../trial/practice.ts';

describe.each(databases)('a list in pages, %s', (_, begin) => {
  let practice: Practice;
  const names = Array.from({ length: 25 }, (_, at) => `Party ${String(at).padStart(2, '0')}`);
  beforeAll(async () => {
    practice = await openPractice(begin);
    for (const name of names) await practice.browser.client.addParty({ body: { name } });
  });
  afterAll(() => practice.close());

  test('following each page’s cursor meets everybody once, and the last page has none', async () => {
    const { client } = practice.browser;
    const pages: string[][] = [];
    let after: string | undefined;
    do {
      const page = await client.listParties({ query: { limit: 10, after } });
      pages.push(page.items.map(({ name }) => name));
      after = page.next;
    } while (after !== undefined);
    expect(pages.map(({ length }) => length)).toEqual([10, 10, 5]);
    expect(pages.flat().sort()).toEqual(names);
  });

  test('a cursor that no page gave is refused', async () => {
    const asking = practice.browser.client.listParties({ query: { after: 'made-up' } });
    expect(await problemOf(asking)).toMatchObject({ status: 400, type: '/api/problems/store/bad-cursor' });
  });

  test.each([0, 201, 'many'])('a page of %s is refused', async (limit) => {
    const asking = practice.browser.client.listParties({ query: { limit } });
    expect(await problemOf(asking)).toMatchObject({ status: 422, pointer: '/limit' });
  });

  test('engagements are listed by their stage', async () => {
    const { client } = practice.browser;
    const { id } = await client.addEngagement({ body: { title: 'Jury in May' } });
    await client.addEngagement({ body: { title: 'Jury in June' } });
    await client.declineEngagement({ params: { id } });
    const { items } = await client.listEngagements({ query: { stage: 'declined' } });
    expect(items).toEqual([{ id, title: 'Jury in May', stage: 'declined', calls: 0, partsWanted: 0 }]);
  });

  test('an engagement is listed with its next call, as long as one is ahead', async () => {
    const { client } = practice.browser;
    const { id } = await enterInquiry(client);
    const next = async () => (await client.listEngagements({})).items.find((item) => item.id === id)?.next;
    expect(await next()).toEqual({ kind: 'rehearsal', start: '2026-11-02T10:00:00+00:00[Europe/London]' });
    practice.setClock('2026-11-04T10:00:00Z');
    expect(await next()).toEqual({ kind: 'recital', start: '2026-11-06T19:30:00+00:00[Europe/London]' });
    practice.setClock(AFTERWARDS);
    expect(await next()).toBeUndefined();
    practice.setClock(OPENED);
  });
});
