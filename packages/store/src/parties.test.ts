// Organisations, parties, seasons and sessions come back as they were kept.

import { Temporal } from '@colla/calendar';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { day, inquiry, newBooks, newId, organisation, party } from '../trial/cast.ts';
import { databases, type Trial } from '../trial/databases.ts';

describe.each(databases)('$name', (database) => {
  let trial: Trial;
  beforeAll(async () => {
    trial = await database.begin();
  });
  afterAll(() => trial.end());

  test('an organisation comes back as it was kept, and as it was changed', async () => {
    const { email: _, ...home } = organisation();
    await trial.store.addOrganisation(home);
    const changed = {
      ...home,
      name: 'Halloway & Daughter',
      taxNumber: 'GB 000 0000 00',
      holidays: [],
      paper: 'Letter' as const,
    };
    await trial.store.within(home.id, async (books) => {
      expect(await books.organisation()).toStrictEqual(home);
      await books.changeOrganisation(changed);
      expect(await books.organisation()).toStrictEqual(changed);
    });
  });

  test('organisations are told with the oldest first, and stay so when one is changed', async () => {
    const before = await trial.store.organisations();
    const [one, two] = [organisation(), organisation()];
    for (const home of [two, one]) await trial.store.addOrganisation(home);
    await trial.store.within(two.id, (books) => books.changeOrganisation({ ...two, name: 'changed' }));
    expect(await trial.store.organisations()).toEqual([...before, two.id, one.id]);
  });

  test('a party comes back as it was kept, changed by keeping it again, and named by its id', async () => {
    const { home } = await newBooks(trial.store);
    const bare = party('Ines Tollund');
    const full = party('Bo Ferrand', {
      address: ['1 Ness Road'],
      email: 'bo@example.org',
      reference: 'PO 12',
    });
    await trial.store.within(home.id, async (books) => {
      for (const one of [bare, { ...full, email: 'old@example.org' }, full]) await books.saveParty(one);
      expect(await books.party(bare.id)).toStrictEqual(bare);
      expect(await books.party(full.id)).toStrictEqual(full);
      expect(await books.party(newId())).toBeUndefined();
      expect(await books.party('no id')).toBeUndefined();
      expect(await books.partyNames([full.id, newId(), 'no id'])).toEqual(new Map([[full.id, 'Bo Ferrand']]));
      expect(await books.partyNames([])).toEqual(new Map());
    });
  });

  test('everybody whom an engagement names is told by name, and nobody else', async () => {
    const { home, soloist, school } = await newBooks(trial.store);
    const [parent, stranger] = [party('Ines Tollund'), party('Bo Ferrand')];
    const asked = inquiry({ soloist, school }, { payers: { school: school.id, family: parent.id } });
    await trial.store.within(home.id, async (books) => {
      for (const one of [parent, stranger]) await books.saveParty(one);
      await books.saveEngagement(asked);
      expect(await books.partyNamesOf(asked.id)).toEqual(
        new Map([
          [soloist.id, 'Odalys Brandt'],
          [school.id, 'Saltmarsh School of Music'],
          [parent.id, 'Ines Tollund'],
        ]),
      );
      expect(await books.partyNamesOf(newId())).toEqual(new Map());
      expect(await books.partyNamesOf('no id')).toEqual(new Map());
    });
  });

  test('a season comes back as it was kept; the latest is listed first', async () => {
    const { home } = await newBooks(trial.store);
    const spring = { id: newId(), name: 'Spring', from: day('2026-01-10'), to: day('2026-06-30') };
    const autumn = { id: newId(), name: 'Autumn', from: day('2026-09-01'), to: day('2026-12-20') };
    await trial.store.within(home.id, async (books) => {
      for (const season of [spring, autumn]) await books.saveSeason(season);
      await books.saveSeason({ ...spring, name: 'Spring term' });
      expect(await books.season(spring.id)).toStrictEqual({ ...spring, name: 'Spring term' });
      expect((await books.seasons({ limit: 5 })).items.map(({ name }) => name)).toEqual([
        'Autumn',
        'Spring term',
      ]);
    });
  });

  test('a session opens its own organisation until it ends, and a wrong token opens none', async () => {
    const { home } = await newBooks(trial.store);
    const until = Temporal.Instant.from('2026-12-01T00:00:00Z');
    await trial.store.addSession({ organisation: home.id, tokenHash: `hash of ${home.id}`, until });
    const asked = (hash: string, now: Temporal.Instant) => trial.store.session(hash, now);
    expect(await asked(`hash of ${home.id}`, until.subtract({ seconds: 1 }))).toEqual({
      organisation: home.id,
      until,
    });
    expect(await asked(`hash of ${home.id}`, until)).toBeUndefined();
    expect(await asked('another hash', until.subtract({ seconds: 1 }))).toBeUndefined();
  });
});
