// Tariffs: every version kept as it was written, and one that cannot be read is told in one sentence.

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { agreed, at, inquiry, newBooks, newId, tariff } from '../trial/cast.ts';
import { databases, type Trial } from '../trial/databases.ts';
import { Refused } from './refused.ts';

describe.each(databases)('$name', (database) => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await database.begin();
  });
  afterAll(() => trial.end());

  test('a tariff comes back with its versions, the oldest first', async () => {
    const { home } = await newBooks(trial.store);
    const id = newId();
    const versions = [
      tariff(),
      tariff({ version: 2, from: '2026-09-01', name: 'House tariff, autumn' }),
    ] as const;
    const kept = await trial.store.within(home.id, async (books) => {
      for (const version of versions) await books.addTariffVersion(id, version);
      return books.tariff(id);
    });
    expect(kept).toStrictEqual({ id, versions });
  });

  test('a version is never altered: the same number again is refused', async () => {
    const { home } = await newBooks(trial.store);
    const id = newId();
    await trial.store.within(home.id, (books) => books.addTariffVersion(id, tariff()));
    const again = trial.store.within(home.id, (books) =>
      books.addTariffVersion(id, tariff({ name: 'Altered' })),
    );
    await expect(again).rejects.toMatchObject({ refusal: { code: 'store/version-taken' } });
    const kept = await trial.store.within(home.id, (books) => books.tariff(id));
    expect(kept?.versions.map(({ name }) => name)).toEqual(['House tariff']);
  });

  test('tariffs are listed by their newest name, whatever its capitals and accents', async () => {
    const { home } = await newBooks(trial.store);
    const listed = await trial.store.within(home.id, async (books) => {
      for (const name of ['zoo', 'Élan', 'arias', 'Exams'])
        await books.addTariffVersion(newId(), tariff({ name }));
      return books.tariffs({ limit: 10 });
    });
    expect(listed.items.map(({ versions }) => versions[0].name)).toEqual(['arias', 'Élan', 'Exams', 'zoo']);
  });

  test('a stored clause of an unknown kind is told in one sentence, and nothing of it is loaded', async () => {
    const { home, ...others } = await newBooks(trial.store);
    const id = newId();
    const engagement = agreed(inquiry(others), tariff({ name: 'Soon unreadable' }));
    await trial.store.within(home.id, async (books) => {
      await books.addTariffVersion(id, tariff({ name: 'Soon unreadable' }));
      await books.saveEngagement(engagement);
    });
    await trial.asOwner(async (owner) => {
      for (const table of ['tariff_versions', 'agreements']) {
        await owner.run(`alter table ${table} no force row level security;
          update ${table} set tariff = jsonb_set(tariff, '{clauses,0,kind}', '"barter"')
            where tariff ->> 'name' = 'Soon unreadable';
          alter table ${table} force row level security`);
      }
    });
    const sentence =
      'Tariff “Soon unreadable”, version 1, is in the books but cannot be read. “barter” is not a kind of clause.';
    const loads = await Promise.allSettled([
      trial.store.within(home.id, (books) => books.tariff(id)),
      trial.store.within(home.id, (books) => books.tariffs({ limit: 10 })),
      trial.store.within(home.id, (books) => books.engagement(engagement.id)),
      trial.store.within(home.id, (books) => books.agreement(engagement.agreement.id)),
    ]);
    for (const load of loads) {
      const { reason } = load as PromiseRejectedResult;
      expect(reason).toBeInstanceOf(Refused);
      expect(reason.refusal.code).toBe('store/unreadable-tariff');
      expect(reason.refusal.sentence.startsWith(sentence)).toBe(true);
    }
    // The list of engagements does not read tariffs, so it still tells of this one.
    const now = at('2026-02-10', '10:00').toInstant();
    const { items } = await trial.store.within(home.id, (books) => books.engagements({ limit: 10, now }));
    expect(items.map((item) => item.id)).toEqual([engagement.id]);
  });
});
