// The last page of a very long list beside its first one, through the built server. The way there is walked page by
// page, as a reader would, since the place in a list is the server's own to write.
import postgres from 'postgres';
import type { Asker } from '../asking.ts';
import { startBuilt } from '../built-server.ts';
import { alternately, type Row, timed } from '../measure.ts';
import { startPostgres } from '../postgres.mjs';

const LIMIT = 200;
const PAGES = 5000;
const LOADS = 100;

const ends: (() => unknown)[] = [];
let ours = async () => 0;
let reference = async () => 0;

const row: Row = {
  id: 'store-3',
  ours: `page ${PAGES} of a list of ${PAGES * LIMIT} payers, ${LOADS} times`,
  reference: 'page 1 of it',
  goal: { atMost: 1.2 },
  rounds: 9,
  prepare: async () => {
    const { url, stop } = await startPostgres();
    ends.unshift(stop);
    const built = await startBuilt(url);
    ends.unshift(built.stop);
    await built.client.openExample({});
    await fill(url);
    const first = `/api/parties?limit=${LIMIT}`;
    const last = await walk(built.ask, first);
    ours = timed(() => loads(built.ask, last));
    reference = timed(() => loads(built.ask, first));
    await ours();
    await reference();
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

/** Adds payers of no engagement, of names as long as names are, until the list has all its pages. */
async function fill(url: string): Promise<void> {
  const sql = postgres(url, { onnotice: () => {} });
  await sql`insert into parties (organisation_id, id, name, filed_as, address)
    select o.id, gen_random_uuid(), f.name, lower(f.name), array[n || ' Weir Lane', 'Ostermouth'] from organisations o,
      generate_series(1, ${PAGES * LIMIT} - (select count(*)::integer from parties)) n,
      lateral (select 'Family ' || md5(n::text) as name) f`;
  await sql`analyze parties`;
  await sql.end();
}

/** The address of the last page. */
async function walk(ask: Asker, first: string): Promise<string> {
  let path = first;
  for (let page = 1; page < PAGES; page += 1) {
    const { next } = (await ask(path)) as { next: string };
    path = `${first}&after=${encodeURIComponent(next)}`;
  }
  return path;
}

async function loads(ask: Asker, path: string): Promise<void> {
  for (let done = 0; done < LOADS; done += 1) await ask(path);
}
