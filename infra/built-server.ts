// The built server on a PostgreSQL server, entered as its owner enters it: by the printed address.
import { fileURLToPath } from 'node:url';
import { type Client, createClient } from '@colla/wire/client';
import { type Asker, askerAt } from './asking.ts';
import { startListening } from './listening.ts';

const MAIN = fileURLToPath(new URL('../apps/api/dist/main.js', import.meta.url));

export interface Built {
  readonly client: Client;
  /** asks over one connection, within the session */
  readonly ask: Asker;
  readonly stop: () => Promise<void>;
}

/** Starts it on the books behind `url`. */
export async function startBuilt(url: string): Promise<Built> {
  const { address, stop } = await startListening(MAIN, { DATABASE_URL: url });
  const { cookie, client } = await enter(address);
  const { ask, end } = askerAt(address, cookie);
  return {
    client,
    ask,
    stop: async () => {
      end();
      await stop();
    },
  };
}

/** Uses the printed address, and is let in from then on. */
async function enter(address: string): Promise<{ cookie: string; client: Client }> {
  const { origin } = new URL(address);
  const response = await fetch(address, { redirect: 'manual' });
  const [cookie = ''] = response.headers.get('set-cookie')?.split(';') ?? [];
  const client = createClient({
    base: `${origin}/api`,
    fetch: (path, how = {}) => fetch(path, { ...how, headers: { ...Object(how.headers), cookie, origin } }),
  });
  return { cookie, client };
}
