import { join } from 'node:path';
import { PGlite } from '@electric-sql/pglite';
import postgres from 'postgres';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { harbourTariff } from './practice.test.cast.ts';
import { databases, openPractice, type Practice, problemOf } from './practice.test.support.ts';

describe.each(databases)('a stored tariff of which a clause became unknown, %s', (_, prepare) => {
  let practice: Practice;
  let id: string;
  beforeAll(async () => {
    const ground = await prepare();
    const before = await openPractice(async () => ({ ...ground, remove: async () => undefined }));
    ({ id } = await before.browser.client.addTariff({ body: harbourTariff }));
    await before.close();
    await write(
      ground.place,
      `update tariff_versions set tariff = jsonb_set(tariff, '{clauses,1,kind}', '"moonlight"')`,
    );
    practice = await openPractice(async () => ground);
  });
  afterAll(() => practice.close());

  test('it is named in one sentence, and the rest of the books stays open', async () => {
    const { client } = practice.browser;
    const problem = await problemOf(client.getTariff({ params: { id } }));
    expect(problem).toMatchObject({ status: 500, type: '/api/problems/store/unreadable-tariff' });
    expect(problem.detail).toContain(
      'Tariff “Harbour tariff”, version 1, is in the books but cannot be read. “moonlight” is not a kind of clause.',
    );
    expect((await client.listEngagements({})).items).toEqual([]);
  });
});

/** Writes past the store, as a newer or a broken program might have done. */
async function write(place: { dataDir: string } | { databaseUrl: string }, statement: string): Promise<void> {
  if ('dataDir' in place) {
    const database = await PGlite.create(join(place.dataDir, 'books'));
    await database.exec(statement);
    await database.close();
    return;
  }
  const client = postgres(place.databaseUrl, { max: 1, onnotice: () => undefined });
  await client.unsafe(statement);
  await client.end();
}
