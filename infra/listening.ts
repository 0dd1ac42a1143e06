// Starts a program that serves, and knows where it listens and how long that took.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { freePort } from './free-port.mjs';

/** Where a program keeps its books: in a folder, or on a PostgreSQL server. */
export type Books = { readonly DATA_DIR: string } | { readonly DATABASE_URL: string };

export interface Listening {
  /** the address that it printed, with the key of the first visit where it gives one */
  readonly address: string;
  /** from its start to the printed address */
  readonly milliseconds: number;
  readonly stop: () => Promise<void>;
}

/** Starts `node <script>` on a free port, and waits for its printed address. */
export async function startListening(script: string, books: Books): Promise<Listening> {
  const { DATABASE_URL: _, ...inherited } = process.env;
  const env = { ...inherited, NODE_ENV: 'production', PORT: String(await freePort()), ...books };
  const before = performance.now();
  const program = spawn(process.execPath, [script], { env, stdio: ['ignore', 'pipe', 'inherit'] });
  const ended = once(program, 'exit');
  for await (const line of createInterface({ input: program.stdout })) {
    const [address] = /http:\/\/127\.0\.0\.1:\d+\S*/.exec(line) ?? [];
    if (address === undefined) continue;
    const milliseconds = performance.now() - before;
    program.stdout.resume();
    const stop = async () => {
      program.kill('SIGTERM');
      await ended;
    };
    return { address, milliseconds, stop };
  }
  throw new Error(`${script} ended before it listened`);
}

/** Milliseconds from the start of `node <script>` to its printed address; the program is stopped again. */
export async function millisecondsToListening(script: string, folder: string): Promise<number> {
  const { milliseconds, stop } = await startListening(script, { DATA_DIR: folder });
  await stop();
  return milliseconds;
}
