// A port of this machine on which nobody listens.
import { once } from 'node:events';
import { createServer } from 'node:net';

/** @returns {Promise<number>} */
export async function freePort() {
  const listener = createServer().listen(0, '127.0.0.1');
  await once(listener, 'listening');
  const address = listener.address();
  listener.close();
  await once(listener, 'close');
  if (address === null || typeof address === 'string') throw new Error('no free port');
  return address.port;
}
