// A first start on an empty data folder, installed and built already.
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { millisecondsToListening } from '../listening.ts';
import { alternately, type Row } from '../measure.ts';

const START = fileURLToPath(new URL('../start.mjs', import.meta.url));
const BARE = fileURLToPath(new URL('bare/server.mjs', import.meta.url));
const folder = await mkdtemp(join(tmpdir(), 'colla-bench-'));

let turn = 0;
const onEmptyFolder = (script: string) => () => {
  turn += 1;
  return millisecondsToListening(script, join(folder, String(turn)));
};

const row: Row = {
  id: 'start-2',
  ours: 'first start on an empty folder',
  reference: 'bare Express + embedded database initialised from nothing',
  goal: { atMost: 0.35 },
  run: alternately(onEmptyFolder(START), onEmptyFolder(BARE)),
  end: () => rm(folder, { recursive: true, force: true }),
};

export default row;
