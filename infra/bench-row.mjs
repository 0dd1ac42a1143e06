// Measures one row in a process of its own, and sends what it found to bench.mjs.
import { pathToFileURL } from 'node:url';

const ROUNDS = 5;

/** @type {import('./measure.ts').Row} */
const row = (await import(pathToFileURL(process.argv[2] ?? '').href)).default;
/** @type {import('./measure.ts').Round[]} */
const rounds = [];
try {
  await row.prepare?.();
  while (rounds.length < (row.rounds ?? ROUNDS)) {
    globalThis.gc?.();
    rounds.push(await row.run());
  }
} finally {
  await row.end?.();
}
const medians = {
  ours: median(rounds.map((round) => round.ours)),
  reference: median(rounds.map((round) => round.reference)),
};
const ratio = median(rounds.map((round) => round.ours / round.reference));
const { id, ours, reference, goal, unit } = row;
process.send?.({ id, ours, reference, goal, unit, medians, ratio }, () => process.exit(0));

/** @param {number[]} values */
function median(values) {
  const sorted = [...values].sort((one, other) => one - other);
  const middle = Math.floor(sorted.length / 2);
  const upper = sorted[middle] ?? Number.NaN;
  return sorted.length % 2 === 1 ? upper : (upper + (sorted[middle - 1] ?? upper)) / 2;
}
