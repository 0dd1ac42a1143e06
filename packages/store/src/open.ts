// Opens the books: embedded in a data folder, or on a PostgreSQL server. One code for both from here on.

import { join } from 'node:path';
import { agreementBooks } from './agreements.ts';
import { answerBooks } from './answers.ts';
import type { Books, Store } from './books.ts';
import { type Connection, Pool } from './connection.ts';
import { documentBooks } from './documents.ts';
import { postEarlier } from './earlier.ts';
import { openEmbedded } from './embedded.ts';
import { engagementBooks } from './engagements.ts';
import { invoiceBooks } from './invoices.ts';
import { ledgerBooks } from './ledger.ts';
import { lockFolder } from './lock.ts';
import { migrate } from './migrate.ts';
import { openInvoiceBooks } from './open-invoices.ts';
import { addOrganisation, organisationBooks } from './organisations.ts';
import { isId } from './page.ts';
import { partyBooks } from './parties.ts';
import { paymentBooks } from './payments.ts';
import { seasonBooks } from './seasons.ts';
import { checkServer, connectTo, withoutRights } from './server.ts';
import { addSession, organisationsKept, sessionKept } from './sessions.ts';
import { tariffBooks } from './tariffs.ts';
import { copyTemplate } from './template.ts';
import { inTransaction, type May, type Transaction } from './transaction.ts';

/** Where the books are: in a folder of this machine, or on a server. */
export type Place = { readonly dataDir: string } | { readonly databaseUrl: string };

const BOOKS_ROLE = 'colla_books';
const DOOR_ROLE = 'colla_door';
const AT_THE_DOOR = `set local role ${DOOR_ROLE}`;
const CONNECTIONS = 10;

/**
 * Opens the books and brings their tables up to date. Throws `Refused` where the folder is in use by another
 * program, or the server is out of reach or older than PostgreSQL 15.
 */
export async function openStore(place: Place): Promise<Store> {
  return 'dataDir' in place ? openFolder(place.dataDir) : openServer(place.databaseUrl);
}

async function openFolder(dataDir: string): Promise<Store> {
  const unlock = lockFolder(dataDir);
  try {
    const folder = join(dataDir, 'books');
    copyTemplate(folder);
    const connection = await openEmbedded(folder);
    await migrate(connection, postEarlier);
    await connection.run(`set time zone 'UTC'; set role ${BOOKS_ROLE}`);
    return storeOn(new Pool([connection]), unlock);
  } catch (reason) {
    unlock();
    throw reason;
  }
}

async function openServer(databaseUrl: string): Promise<Store> {
  const owner = connectTo(databaseUrl);
  try {
    await checkServer(owner, databaseUrl);
    await migrate(owner, postEarlier);
    await checkRoles(owner);
  } catch (reason) {
    throw withoutRights(reason) ?? reason;
  } finally {
    await owner.close();
  }
  // Every connection is the bound role's from its first moment: one that is made again after a loss, too.
  const connections = Array.from({ length: CONNECTIONS }, () => connectTo(databaseUrl, BOOKS_ROLE));
  return storeOn(new Pool(connections), () => undefined);
}

/** The server's user must be able to step down into the roles that the walls bind. */
function checkRoles(owner: Connection): Promise<void> {
  return owner.run(`set role ${BOOKS_ROLE}; reset role; set role ${DOOR_ROLE}; reset role`);
}

function storeOn(pool: Pool, closed: () => void): Store {
  const run = <Answer>(may: May, opening: string, work: (transaction: Transaction) => Promise<Answer>) =>
    pool.lend((connection: Connection) => inTransaction(connection, { may, opening }, work));
  return {
    within: (organisation, work) =>
      run('write', walls(organisation), (transaction) => work(booksIn(transaction))),
    reading: (organisation, work) =>
      run('read', walls(organisation), (transaction) => work(booksIn(transaction))),
    organisations: () => run('read', AT_THE_DOOR, organisationsKept),
    addOrganisation: (organisation) =>
      run('write', walls(organisation.id), (transaction) => addOrganisation(transaction, organisation)),
    addSession: ({ organisation, ...session }) =>
      run('write', walls(organisation), (transaction) => addSession(transaction, session)),
    session: (tokenHash, now) =>
      run('read', AT_THE_DOOR, (transaction) => sessionKept(transaction, tokenHash, now)),
    async close() {
      await pool.close();
      closed();
    },
  };
}

/** Says whose the books of a transaction are. It goes with `begin`, so the id is written into it: nothing else may be. */
function walls(organisation: string): string {
  if (!isId(organisation)) throw new Error('this is the id of no organisation');
  return `select set_config('colla.organisation', '${organisation}', true)`;
}

function booksIn(transaction: Transaction): Books {
  return {
    ...organisationBooks(transaction),
    ...partyBooks(transaction),
    ...tariffBooks(transaction),
    ...engagementBooks(transaction),
    ...agreementBooks(transaction),
    ...invoiceBooks(transaction),
    ...paymentBooks(transaction),
    ...ledgerBooks(transaction),
    ...openInvoiceBooks(transaction),
    ...documentBooks(transaction),
    ...answerBooks(transaction),
    ...seasonBooks(transaction),
  };
}
