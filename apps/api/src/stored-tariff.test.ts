import { readTariff } from '@colla/rates';
import { granted } from '@colla/refusal';
import { v7 } from 'uuid';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { harbourTariff } from '../trial/cast.ts';
import { databases, openPractice, type Practice, problemOf } from '../trial/practice.ts';
import { firstOrganisation } from './first.ts';

describe.each(databases)('a stored tariff of which a clause became unknown, %s', (_, begin) => {
  const id = v7();
  let practice: Practice;
  beforeAll(async () => {
    const trial = await begin();
    const organisation = await firstOrganisation(trial.store, { newId: v7, runtimeZone: 'UTC' });
    const tariff = granted(readTariff({ ...harbourTariff, version: 1 }));
    await trial.store.within(organisation, (books) => books.addTariffVersion(id, tariff));
    await trial.asOwner((books) =>
      books.run(`update tariff_versions set tariff = jsonb_set(tariff, '{clauses,1,kind}', '"moonlight"')`),
    );
    practice = await openPractice(async () => trial);
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
