// Asks a server over one connection that is kept open, as a browser does, at as little cost of its own as there is.
import { once } from 'node:events';
import { Agent, get, type IncomingMessage } from 'node:http';
import { json } from 'node:stream/consumers';

/** Asks for an address again and again. Every answer must be a 200. */
export type Asker = (path: string) => Promise<unknown>;

/** Asks at the origin of `address`; `cookie` carries the session. */
export function askerAt(address: string, cookie?: string): { ask: Asker; end: () => void } {
  const agent = new Agent({ keepAlive: true, maxSockets: 1 });
  const headers = cookie === undefined ? {} : { cookie };
  const ask = async (path: string) => {
    const [response] = (await once(get(new URL(path, address), { agent, headers }), 'response')) as [
      IncomingMessage,
    ];
    if (response.statusCode !== 200) throw new Error(`${path} is answered with ${response.statusCode}`);
    return json(response);
  };
  return { ask, end: () => agent.destroy() };
}
