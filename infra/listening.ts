// Starts a program that serves and measures the time until it says where it listens.
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { createInterface } from 'node:readline';
import { freePort } from './free-port.mjs';

/** Milliseconds from the start of `node <script>` to its printed address; the program is stopped again. */
export async function millisecondsToListening(script: string, folder: string): Promise<number> {
  const { DATABASE_URL: _, ...inherited } = process.env;
  const env = { ...inherited, NODE_ENV: 'production', PORT: String(await freePort()), DATA_DIR: folder };
  const before = performance.now();
  const program = spawn(process.execPath, [script], { env, stdio: ['ignore', 'pipe', 'inherit'] });
  const ended = once(program, 'exit');
  for await (const line of createInterface({ input: program.stdout })) {
    if (!line.includes(`http://127.0.0.1:${env.PORT}`)) continue;
    const after = performance.now();
    program.stdout.resume();
    program.kill('SIGTERM');
    await ended;
    return after - before;
  }
  throw new Error(`${script} ended before it listened`);
}
