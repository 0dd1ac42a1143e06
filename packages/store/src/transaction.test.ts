// A transaction: everything in it happens, or nothing does, whoever looks away.

import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { newBooks, newId, party, TODAY } from '../trial/cast.ts';
import { databases, servers, type Trial } from '../trial/databases.ts';
import type { Books } from './books.ts';
import { connectTo } from './server.ts';

describe.each(databases)('$name', (database) => {
  let trial: Trial;
  let home: { id: string };
  beforeAll(async () => {
    trial = await database.begin();
    home = (await newBooks(trial.store)).home;
  });
  afterAll(() => trial.end());

  const names = () =>
    trial.store.within(home.id, async (books) =>
      (await books.parties({ limit: 100 })).items.map(({ name }) => name),
    );

  test('what was kept before something went wrong is undone', async () => {
    const before = await names();
    const going = trial.store.within(home.id, async (books) => {
      await books.saveParty(party('Undone'));
      throw new Error('it went wrong');
    });
    await expect(going).rejects.toThrow('it went wrong');
    expect(await names()).toEqual(before);
  });

  test('a statement that failed undoes the whole even where nobody looked at its failure', async () => {
    const before = await names();
    const going = trial.store.within(home.id, async (books) => {
      await books.saveParty(party('Undone'));
      await books.saveEngagement({ id: 'no id' } as never).catch(() => undefined);
      await books
        .savePayment({ id: newId(), allocations: [], amount: -1n, credit: 0n } as never, TODAY)
        .catch(() => undefined);
    });
    await expect(going).rejects.toThrow();
    expect(await names()).toEqual(before);
  });

  test('books are of no use once their transaction has ended', async () => {
    let kept: Books | undefined;
    await trial.store.within(home.id, async (books) => {
      kept = books;
    });
    await expect(kept?.saveParty(party('Too late'))).rejects.toThrow('after their transaction had ended');
    expect(await names()).not.toContain('Too late');
  });

  test('what was begun and not waited for still belongs to its transaction', async () => {
    await trial.store.within(home.id, async (books) => {
      void books.saveParty(party('Not waited for'));
    });
    expect(await names()).toContain('Not waited for');
  });

  test('what only reads sees the books and can change nothing in them', async () => {
    const before = await names();
    const listed = await trial.store.reading(
      home.id,
      async (books) => (await books.parties({ limit: 100 })).items,
    );
    expect(listed.map(({ name }) => name)).toEqual(before);
    const going = trial.store.reading(home.id, (books) => books.saveParty(party('Slipped in')));
    await expect(going).rejects.toThrow(/read-only transaction/);
    expect(await names()).toEqual(before);
  });

  test('what only reads fails with a statement that failed even where nobody looked at its failure', async () => {
    const going = trial.store.reading(home.id, async (books) => {
      await books.saveParty(party('Slipped in')).catch(() => undefined);
    });
    await expect(going).rejects.toThrow(/read-only transaction/);
  });

  test('an id that is none is no organisation', async () => {
    const going = async () => trial.store.within("' or true --", async () => undefined);
    await expect(going()).rejects.toThrow('the id of no organisation');
  });
});

describe.each(servers)('$name', (database) => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await database.begin();
  });
  afterAll(() => trial.end());

  test('a connection lost in the middle of a transaction ends it; the books go on with another', async () => {
    const { home } = await newBooks(trial.store);
    const going = trial.store.within(home.id, async (books) => {
      await books.saveParty(party('Lost'));
      await endConnections(trial);
      return books.parties({ limit: 10 });
    });
    await expect(going).rejects.toThrow();
    const kept = await trial.store.within(home.id, (books) => books.parties({ limit: 10 }));
    expect(kept.items.map(({ name }) => name)).toEqual(['Odalys Brandt', 'Saltmarsh School of Music']);
  });
});

/** Ends every other connection to the database of the trial, as a server that is restarted would. */
async function endConnections({ place }: Trial): Promise<void> {
  if (!('databaseUrl' in place)) throw new Error('only a server has connections');
  const owner = connectTo(place.databaseUrl);
  await owner.query(
    'select pg_terminate_backend(pid, 5000) from pg_stat_activity where datname = current_database() and pid <> pg_backend_pid()',
    [],
  );
  await owner.close();
}
