// npm test: installs what is missing and runs everything, on both databases and in a real browser. Goes on
// after a failure, so that one run tells all; ends with one line, and with an exit code that agrees with it.
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { build } from './build.mjs';
import { findOrInstallChromium } from './chromium.mjs';
import { install } from './install.mjs';
import { startPostgres } from './postgres.mjs';
import { endWithNpm, root } from './root.mjs';
import { turbo } from './turbo.mjs';

/** @typedef {{ passed: number, failed: number }} Tally */

const MODULES = join(root, 'node_modules');
const reports = mkdtempSync(join(tmpdir(), 'colla-reports-'));
const failure = { passed: 0, failed: 1 };
const total = { passed: 0, failed: 0 };
/** @type {import('node:child_process').ChildProcess | undefined} */
let running;

process.on('exit', () => rmSync(reports, { recursive: true, force: true }));
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) process.once(signal, abandon);

endWithNpm();
install();
await step('Types', types);
await step('Style', style);
// Before the units: they copy the prepared database that the build leaves instead of making one each.
await step('Build', built);
await step('Units, properties and doors, on the embedded database and on a PostgreSQL server', units);
await step('Journeys in a browser', journeys);
console.log(`\n${total.passed} passed, ${total.failed} failed`);
process.exitCode = total.failed > 0 ? 1 : 0;

/**
 * @param {string} title
 * @param {() => Promise<Tally>} perform
 */
async function step(title, perform) {
  console.log(`\n=== ${title}`);
  const { passed, failed } = await perform();
  total.passed += passed;
  total.failed += failed;
  if (failed > 0) console.log(`${title}: failed.`);
}

async function types() {
  const rooms = turbo(['run', 'types', '--continue']);
  const tests = await run([join(MODULES, 'typescript', 'bin', 'tsc'), '--noEmit']);
  return check(rooms && tests === 0);
}

async function style() {
  return check((await run([join(MODULES, '@biomejs', 'biome', 'bin', 'biome'), 'check', '.'])) === 0);
}

async function built() {
  build();
  return check(true);
}

async function units() {
  const server = await startPostgres().catch((reason) => {
    console.log(reason.message);
    return undefined;
  });
  if (!server) return failure;
  console.log(`PostgreSQL ${server.version} is up for the length of this step.`);
  const report = join(reports, 'vitest.json');
  const words = ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`];
  const code = await run([join(MODULES, 'vitest', 'vitest.mjs'), ...words], {
    TEST_DATABASE_URL: server.url,
  });
  await server.stop();
  return agreeing(code, tallyOfVitest(report));
}

async function journeys() {
  const chromium = findOrInstallChromium();
  if (!chromium) {
    console.log('No Chromium was found or could be installed: install one, or name it in CHROMIUM_PATH.');
    return failure;
  }
  const report = join(reports, 'playwright.json');
  const words = ['test', '--reporter=list,json'];
  const env = { CHROMIUM_PATH: chromium, PLAYWRIGHT_JSON_OUTPUT_FILE: report };
  const code = await run([join(MODULES, '@playwright', 'test', 'cli.js'), ...words], env, 'e2e');
  return agreeing(code, tallyOfPlaywright(report));
}

/**
 * @param {string[]} words a script for Node, and what it is told
 * @param {Record<string, string>} env
 * @param {string} folder
 * @returns {Promise<number>} the exit code
 */
function run(words, env = {}, folder = '.') {
  const cwd = join(root, folder);
  const child = spawn(process.execPath, words, { cwd, stdio: 'inherit', env: { ...process.env, ...env } });
  running = child;
  return new Promise((resolve) => {
    child.once('error', () => resolve(1));
    child.once('exit', (code) => resolve(code ?? 1));
  });
}

// The server of the tests and the reports go with this process, whichever way it ends.
/** @param {NodeJS.Signals} signal */
function abandon(signal) {
  running?.kill(signal);
  console.log(`\nStopped by ${signal}.`);
  process.exit(130);
}

/** @param {boolean} holds */
function check(holds) {
  return holds ? { passed: 0, failed: 0 } : failure;
}

// A run that failed although no test did (a file that could not be read, nothing to run) is one failure.
/**
 * @param {number} code
 * @param {Tally} tally
 */
function agreeing(code, { passed, failed }) {
  return { passed, failed: code !== 0 && failed === 0 ? 1 : failed };
}

/** @param {string} report */
function tallyOfVitest(report) {
  const { numPassedTests: passed = 0, numFailedTests: failed = 0 } = read(report);
  return { passed, failed };
}

/** @param {string} report */
function tallyOfPlaywright(report) {
  const { expected = 0, flaky = 0, unexpected = 0 } = read(report).stats ?? {};
  return { passed: expected + flaky, failed: unexpected };
}

/** @param {string} report */
function read(report) {
  try {
    return JSON.parse(readFileSync(report, 'utf8'));
  } catch {
    return {};
  }
}
