// Brings up a PostgreSQL server for tests and measurements, and takes it down. The server is kept by a process
// of its own (postgres-keeper.mjs) that ends with its standard input, so that nothing is left behind when this
// process is interrupted or killed.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';

const KEEPER = fileURLToPath(new URL('postgres-keeper.mjs', import.meta.url));

/**
 * Throws with one clear sentence when no server can be brought up.
 * @returns {Promise<{ url: string, version: string, stop: () => Promise<void> }>}
 */
export async function startPostgres() {
  const keeper = spawn(process.execPath, [KEEPER], { detached: true, stdio: ['pipe', 'pipe', 'inherit'] });
  const ended = once(keeper, 'exit');
  for await (const line of createInterface({ input: keeper.stdout })) {
    const told = JSON.parse(line);
    if (told.refused) throw new Error(told.refused);
    const stop = async () => {
      keeper.stdin.end();
      await ended;
    };
    return { url: told.url, version: told.version, stop };
  }
  throw new Error('The PostgreSQL server ended before it said where it listens.');
}
