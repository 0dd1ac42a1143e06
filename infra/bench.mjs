// npm run bench: measures each row of infra/bench beside its reference and prints the ratios. `npm run bench --
// rates-1 start-1` measures these only. Each row has a process of its own; a goal is missed when the median is
// more than a tenth beyond it, since medians move by that much from run to run.
import { fork } from 'node:child_process';
import { once } from 'node:events';
import { readdirSync } from 'node:fs';
import { basename, join } from 'node:path';
import { build } from './build.mjs';
import { install } from './install.mjs';
import { root, stopWith } from './root.mjs';

/** @typedef {{ id: string, ours: string, reference: string, goal: { atMost?: number, atLeast?: number }, unit?: string }} Told */
/** @typedef {Told & { medians: { ours: number, reference: number }, ratio: number }} Result */

const ROWS = join(root, 'infra', 'bench');
const BUNDLED = join(root, 'node_modules', '.cache', 'colla-bench');
const SLACK = 1.1;

const asked = process.argv.slice(2);
const all = readdirSync(ROWS)
  .filter((name) => name.endsWith('.ts'))
  .map((name) => basename(name, '.ts'));
const unknown = asked.filter((id) => !all.includes(id));
if (unknown.length > 0) stopWith(`There is no row ${unknown.join(', ')}; there are ${all.join(', ')}.`);
const ids = asked.length > 0 ? asked : all;

install();
build();
await bundleRows();
const lines = [['what', 'ours', 'reference', 'ratio', 'goal', 'holds']];
for (const id of ids) {
  console.log(`Measuring ${id} ...`);
  lines.push(await measure(id));
}
print(lines);

// esbuild is there only after installing.
async function bundleRows() {
  const { bundle } = await import('./bundle.mjs');
  const entries = Object.fromEntries(ids.map((id) => [id, join(ROWS, `${id}.ts`)]));
  await bundle({ entries, folder: BUNDLED });
}

/**
 * @param {string} id
 * @returns {Promise<string[]>} the cells of its line
 */
async function measure(id) {
  const child = fork(join(root, 'infra', 'bench-row.mjs'), [join(BUNDLED, `${id}.js`)], {
    cwd: root,
    execArgv: ['--expose-gc'],
  });
  /** @type {Result | undefined} */
  let result;
  child.on('message', (message) => {
    result = /** @type {Result} */ (message);
  });
  await once(child, 'exit');
  if (!result) {
    process.exitCode = 1;
    return [id, 'failed', '', '', '', 'no'];
  }
  return cells(result);
}

/** @param {Result} result */
function cells({ id, ours, reference, goal, unit = 'ms', medians, ratio }) {
  const holds =
    goal.atMost !== undefined ? ratio <= goal.atMost * SLACK : ratio * SLACK >= (goal.atLeast ?? 0);
  if (!holds) process.exitCode = 1;
  const wanted = goal.atMost !== undefined ? `<= ${goal.atMost}` : `>= ${goal.atLeast}`;
  return [
    `${id}: ${ours} / ${reference}`,
    `${figure(medians.ours)} ${unit}`,
    `${figure(medians.reference)} ${unit}`,
    ratio.toFixed(2),
    wanted,
    holds ? 'yes' : 'no',
  ];
}

/** @param {number} value */
function figure(value) {
  return value >= 100 ? value.toFixed(0) : value.toPrecision(3);
}

/** @param {string[][]} table */
function print(table) {
  const widths =
    table[0]?.map((_, column) => Math.max(...table.map((line) => line[column]?.length ?? 0))) ?? [];
  console.log('');
  for (const line of table) {
    console.log(
      line
        .map((cell, column) => cell.padEnd(widths[column] ?? 0))
        .join('  ')
        .trimEnd(),
    );
  }
}
