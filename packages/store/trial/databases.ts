// The databases that every test of the books runs on: the embedded one in a temporary folder, and a new database
// on the real server that TEST_DATABASE_URL names (`npm test` brings one up; by hand, infra/postgres-keeper.mjs).

import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Connection } from '../src/connection.ts';
import { openEmbedded } from '../src/embedded.ts';
import { openStore, type Place, type Store } from '../src/index.ts';
import { connectTo } from '../src/server.ts';
import { makeTemplate } from '../src/template.ts';

export { firstBooks, makeFirstBooks } from './first-books.ts';

/** A place for books that are thrown away afterwards. */
export interface Trial {
  readonly place: Place;
  /** The books as they are open now. */
  store: Store;
  /** Closes the books and opens them again. */
  reopen(): Promise<void>;
  /** Closes the books and gives the bare database, as its owner sees it. */
  bare(): Promise<Connection>;
  /** Closes the books, works on the bare database, and opens the books again. */
  asOwner(work: (database: Connection) => Promise<void>): Promise<void>;
  end(): Promise<void>;
}

export interface Database {
  readonly name: string;
  begin(): Promise<Trial>;
}

const serverUrl = process.env.TEST_DATABASE_URL;
if (!serverUrl)
  console.info('TEST_DATABASE_URL is not set: the books are tried on the embedded database only.');

const embedded: Database = {
  name: 'in the embedded database',
  async begin() {
    await makeTemplate();
    const dataDir = mkdtempSync(join(tmpdir(), 'colla-books-'));
    return trialAt(
      { dataDir },
      () => openEmbedded(join(dataDir, 'books')),
      async () => rmSync(dataDir, { recursive: true }),
    );
  },
};

function onServer(url: string): Database {
  return {
    name: 'on a PostgreSQL server',
    async begin() {
      const name = `colla_trial_${process.pid}_${++made}`;
      const databaseUrl = Object.assign(new URL(url), { pathname: `/${name}` }).href;
      await onMain(url, `create database ${name}`);
      return trialAt(
        { databaseUrl },
        async () => connectTo(databaseUrl),
        () => onMain(url, `drop database ${name} with (force)`),
      );
    },
  };
}

let made = 0;

/** Every database there is to try. */
export const databases: readonly Database[] = [embedded, ...(serverUrl ? [onServer(serverUrl)] : [])];

/** Only what a server has: several connections, and other programs on it. */
export const servers: readonly Database[] = databases.filter((database) => database !== embedded);

async function onMain(url: string, statement: string): Promise<void> {
  const main = connectTo(url);
  await main.run(statement);
  await main.close();
}

async function trialAt(
  place: Place,
  bare: () => Promise<Connection>,
  remove: () => Promise<void>,
): Promise<Trial> {
  const end = async () => {
    await trial.store.close();
    await remove();
  };
  const trial: Trial = {
    place,
    store: await openStore(place),
    async reopen() {
      await trial.store.close();
      trial.store = await openStore(place);
    },
    async bare() {
      await trial.store.close();
      trial.end = remove;
      return bare();
    },
    async asOwner(work) {
      const database = await trial.bare();
      await work(database);
      await database.close();
      trial.store = await openStore(place);
      trial.end = end;
    },
    end,
  };
  return trial;
}
