// One engagement with everything that hangs on it, as the built server answers it: session, organisation, walls.
// Both sides ask one PostgreSQL server through the same driver, and must answer with the very same JSON.
import { deepStrictEqual } from 'node:assert';
import { fileURLToPath } from 'node:url';
import type { Client } from '@colla/wire/client';
import { type Asker, askerAt } from '../asking.ts';
import { startBuilt } from '../built-server.ts';
import { startListening } from '../listening.ts';
import { alternately, type Row, timed } from '../measure.ts';
import { startPostgres } from '../postgres.mjs';

const BARE = fileURLToPath(new URL('bare/whole-engagement.mjs', import.meta.url));
const LOADS = 300;
/** Settled, with a recital, three rehearsals, a programme, journeys, an invoice and two payments. */
const TITLE = 'Song evening: Teodor Brânzan';

const ends: (() => unknown)[] = [];
let ours = async () => 0;
let reference = async () => 0;

const row: Row = {
  id: 'store-1',
  ours: `${LOADS} loads of one engagement whole through the API, on a PostgreSQL server`,
  reference: 'bare Express + one hand-written SQL with the same JSON',
  goal: { atMost: 1.8 },
  rounds: 9,
  prepare: async () => {
    const { url, stop } = await startPostgres();
    ends.unshift(stop);
    const built = await startBuilt(url);
    ends.unshift(built.stop);
    const bare = await startListening(BARE, { DATABASE_URL: url });
    ends.unshift(bare.stop);
    const { ask: askBare, end } = askerAt(bare.address);
    ends.unshift(end);
    await built.client.openExample({});
    const path = `/api/engagements/${await idOf(TITLE, built.client)}`;
    deepStrictEqual(await built.ask(path), await askBare(path));
    ours = timed(() => loads(built.ask, path));
    reference = timed(() => loads(askBare, path));
    for (let warm = 0; warm < 5; warm += 1) {
      await ours();
      await reference();
    }
  },
  run: alternately(
    () => ours(),
    () => reference(),
  ),
  end: async () => {
    for (const end of ends) await end();
  },
};

export default row;

async function idOf(title: string, client: Client): Promise<string> {
  const { items } = await client.listEngagements({ query: { limit: 200 } });
  const found = items.find((item) => item.title === title);
  if (!found) throw new Error(`the example has no engagement titled ${title}`);
  return found.id;
}

async function loads(ask: Asker, path: string): Promise<void> {
  for (let done = 0; done < LOADS; done += 1) await ask(path);
}
