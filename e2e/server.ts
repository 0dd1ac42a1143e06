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
  /** the one-time key of the first visit */
  readonly key: string;
  /** the whole address that it printed, key included */
  readonly invitation: string;
}

const MAIN = fileURLToPath(new URL('../apps/api/dist/main.js', import.meta.url));

export const test = base.extend<{ server: Server }>({
  server: async ({ browserName: _ }, use) => {
    const folder = await mkdtemp(join(tmpdir(), 'colla-journey-'));
    const program = await start(folder);
    await use(await invitationOf(program));
    await stop(program);
    await rm(folder, { recursive: true, force: true });
  },
});

async function start(folder: string): Promise<ChildProcess> {
  const { DATABASE_URL: _, ...environment } = process.env;
  const env = { ...environment, NODE_ENV: 'production', PORT: String(await freePort()), DATA_DIR: folder };
  return spawn(process.execPath, [MAIN], { env, stdio: ['ignore', 'pipe', 'pipe'] });
}

async function invitationOf(program: ChildProcess): Promise<Server> {
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
    return serverAt(new URL(invitation));
  }
  throw new Error(`The server ended before it printed its address. It said: ${said}`);
}

function serverAt(invitation: URL): Server {
  const key = invitation.searchParams.get('key') ?? '';
  return { address: invitation.origin, key, invitation: invitation.href };
}

async function stop(program: ChildProcess): Promise<void> {
  if (program.exitCode !== null || program.signalCode !== null) return;
  const ended = once(program, 'exit');
  program.kill('SIGTERM');
  await ended;
}
