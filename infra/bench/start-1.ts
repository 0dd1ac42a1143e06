// A second start: everything installed, built and migrated already.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { millisecondsToListening } from '../listening.ts';
import { alternately, type Row } from '../measure.ts';

const START = fileURLToPath(new URL('../start.mjs', import.meta.url));
const BARE = fileURLToPath(new URL('bare/server.mjs', import.meta.url));
const folder = await mkdtemp(join(tmpdir(), 'colla-bench-'));

const ours = () => millisecondsToListening(START, join(folder, 'ours'));
const reference = () => millisecondsToListening(BARE, join(folder, 'bare'));

const row: Row = {
  id: 'start-1',
  ours: 'second start, listening with the embedded database open',
  reference: 'bare Express + embedded database open',
  goal: { atMost: 1.5 },
  rounds: 7,
  prepare: async () => {
    await ours();
    await reference();
  },
  run: alternately(ours, reference),
  end: () => rm(folder, { recursive: true, force: true }),
};

export default row;
