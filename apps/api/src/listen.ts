// Listens on this machine alone, and stops without dropping what is being answered.

import { once } from 'node:events';
import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { Refusal } from '@colla/refusal';
import { Refused } from '@colla/store';
import type { Express } from 'express';

export const HOST = '127.0.0.1';

/** Throws `Refused` where the port is not to be had. */
export async function listen(app: Express, port: number): Promise<Server> {
  const server = createServer(app).listen(port, HOST);
  try {
    await once(server, 'listening');
    return server;
  } catch {
    throw new Refused(
      new Refusal(
        'config/port-taken',
        `Port ${port} is not to be had: another program may be using it. Stop that one, or choose another port by PORT.`,
        { port },
      ),
    );
  }
}

/** Where it listens, as a browser is told: `http://127.0.0.1:4170`. */
export function addressOf(server: Server): string {
  return `http://${HOST}:${(server.address() as AddressInfo).port}`;
}

const SECONDS_TO_FINISH = 5;

/** Ends once everything that was asked already is answered. */
export async function stop(server: Server): Promise<void> {
  const closed = once(server, 'close');
  server.close();
  server.closeIdleConnections();
  setTimeout(() => server.closeAllConnections(), SECONDS_TO_FINISH * 1000).unref();
  await closed;
}
