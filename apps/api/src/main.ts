// Starts and stops: opens the books, listens, prints the address with its one-time key.

import { randomBytes } from 'node:crypto';
import { fileURLToPath } from 'node:url';
import { staleZoneWarning, Temporal } from '@colla/calendar';
import { openStore, Refused } from '@colla/store';
import { v7 as newId } from 'uuid';
import { createApp } from './app.ts';
import { readConfig } from './config.ts';
import { firstOrganisation } from './first.ts';
import { addressOf, listen, stop } from './listen.ts';
import { must } from './refusals.ts';

const dashboard = fileURLToPath(new URL('../../dashboard/dist', import.meta.url));
const runtimeZone = Intl.DateTimeFormat().resolvedOptions().timeZone;
const newKey = () => randomBytes(24).toString('base64url');
const paper = {
  invoicePdf: async (...asked: Printing) => (await import('@colla/paper')).invoicePdf(...asked),
};
type Printing = Parameters<typeof import('@colla/paper').invoicePdf>;

async function start(): Promise<void> {
  const config = must(readConfig());
  const store = await openStore(config.books);
  const invitation = { key: newKey(), organisation: await firstOrganisation(store, { newId, runtimeZone }) };
  const app = createApp({ store, paper, now: Temporal.Now.instant, newId, newKey, invitation, dashboard });
  const server = await listen(app, config.port).catch(async (reason) => {
    await store.close();
    throw reason;
  });
  const end = () => stop(server).then(() => store.close());
  for (const signal of ['SIGINT', 'SIGTERM']) process.once(signal, end);
  console.log(
    `Open this address; its key lets one browser in, once:\n\n  ${addressOf(server)}/?key=${invitation.key}\n`,
  );
  const warning = staleZoneWarning();
  if (warning !== undefined) console.warn(warning);
}

start().catch((reason: unknown) => {
  console.error(reason instanceof Refused ? reason.refusal.sentence : reason);
  process.exitCode = 1;
});
