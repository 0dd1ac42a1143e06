// A server of its own for each journey: the built program, on a free port, with an empty book.
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { fileURLToPath } from 'node:url';
import { freePort } from '@colla/infra/free-port';
import { test as base } from '@playwright/test';

export { expect } from '@playwright/test';

export interface Server {
  /** where it listens, as `http://127.0.0.1:4170` */
  readonly address: string;
  /** the whole address that it printed first, with the one-time key of the first visit */
  readonly invitation: string;
  /** Ends it and starts it again, on the same port and the same book; gives the address that it prints now. */
  readonly restart: () => Promise<string>;
}

const MAIN = fileURLToPath(new URL('../apps/api/dist/main.js', import.meta.url));

export const test = base.extend<{ server: Server }>({
  server: async ({ browserName: _ }, use) => {
    const folder = await mkdtemp(join(tmpdir(), 'colla-journey-'));
    const port = await freePort();
    let program = start(folder, port);
    const invitation = await invitationOf(program);
    const restart = async () => {
      await stop(program);
      program = start(folder, port);
      return invitationOf(program);
    };
    await use({ address: new URL(invitation).origin, invitation, restart });
    await stop(program);
    await rm(folder, { recursive: true, force: true });
  },
});

function start(folder: string, port: number): ChildProcess {
  const { DATABASE_URL: _, ...environment } = process.env;
  const env = { ...environment, NODE_ENV: 'production', PORT: String(port), DATA_DIR: folder };
  return spawn(process.execPath, [MAIN], { env, stdio: ['ignore', 'pipe', 'pipe'] });
}

async function invitationOf(program: ChildProcess): Promise<string> {
  if (!program.stdout || !program.stderr) throw new Error('the server has no output to read');
  let said = '';
  program.stderr.on('data', (chunk) => {
    said += chunk;
  });
  for await (const line of createInterface({ input: program.stdout })) {
    said += `${line}\n`;
    const invitation = /http:\/\/127\.0\.0\.1:\d+\S*/.exec(line)?.[0];
    if (!invitation) continue;
    program.stdout.resume();
    return invitation;
  }
  throw new Error(`The server ended before it printed its address. It said: ${said}`);
}

async function stop(program: ChildProcess): Promise<void> {
  if (program.exitCode !== null || program.signalCode !== null) return;
  const ended = once(program, 'exit');
  program.kill('SIGTERM');
  await ended;
}
