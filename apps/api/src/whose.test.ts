import { Temporal } from '@colla/calendar';
import type { Trial } from '@colla/store/trial';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { databases } from '../trial/practice.ts';
import { firstOrganisation } from './first.ts';
import { sessionsOf } from './whose.ts';

const MORNING = Temporal.Instant.from('2026-10-20T09:00:00Z');

describe.each(databases)('whose a session is, %s', (_, begin) => {
  let trial: Trial;
  let organisation: string;
  beforeAll(async () => {
    trial = await begin();
    const newId = () => '018f0000-0000-7000-8000-000000000001';
    organisation = await firstOrganisation(trial.store, { newId, runtimeZone: 'Europe/London' });
    const until = MORNING.add({ seconds: 150 });
    await trial.store.addSession({ organisation, tokenHash: 'known', until });
  });
  afterAll(() => trial.end());

  /** Asks at so many seconds after the first time, and says how often the books were asked by then. */
  function asking() {
    let [seconds, asked] = [0, 0];
    const session: Trial['store']['session'] = (...words) => {
      asked += 1;
      return trial.store.session(...words);
    };
    const whose = sessionsOf({ store: { session }, now: () => MORNING.add({ seconds }) });
    return async (tokenHash: string, after: number) => {
      seconds = after;
      return [await whose(tokenHash), asked];
    };
  }

  test('is asked of the books once a minute, and never believed beyond its end', async () => {
    const ask = asking();
    expect(await ask('known', 0)).toEqual([organisation, 1]);
    expect(await ask('known', 59)).toEqual([organisation, 1]);
    expect(await ask('known', 60)).toEqual([organisation, 2]);
    expect(await ask('known', 119)).toEqual([organisation, 2]);
    expect(await ask('known', 120)).toEqual([organisation, 3]);
    expect(await ask('known', 149)).toEqual([organisation, 3]);
    expect(await ask('known', 150)).toEqual([undefined, 4]);
  });

  test('is nobody’s where it was made up, however often it is tried', async () => {
    const ask = asking();
    expect(await ask('made up', 0)).toEqual([undefined, 1]);
    expect(await ask('made up', 1)).toEqual([undefined, 2]);
  });
});
