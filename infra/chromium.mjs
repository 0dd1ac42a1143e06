// Finds a Chromium that runs, or brings one here where that is possible.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { createRequire } from 'node:module';
import { delimiter, join } from 'node:path';
import { root } from './root.mjs';

const NAMES = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable', 'chrome', 'msedge'];
const PLACES = [
  '/usr/lib/chromium/chromium',
  '/snap/bin/chromium',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
  'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
];
const MINUTES_TO_INSTALL = 10;

/** @returns {string | undefined} the path of a browser that runs */
export function findChromium() {
  const named = process.env.CHROMIUM_PATH;
  if (named) return runs(named) ? named : undefined;
  return [...onThePath(), ...PLACES, ...fromPlaywright()].find((path) => existsSync(path) && runs(path));
}

/** @returns {string | undefined} the same, installing one first where none is found */
export function findOrInstallChromium() {
  const found = findChromium();
  if (found || process.env.CHROMIUM_PATH) return found;
  console.log('No Chromium found on this machine: trying to install one.');
  for (const install of [installByApt, installByPlaywright]) {
    install();
    const installed = findChromium();
    if (installed) return installed;
  }
  return undefined;
}

function onThePath() {
  const folders = (process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return folders.flatMap((folder) => NAMES.map((name) => join(folder, name)));
}

// Playwright itself knows where it would keep the browser that it downloads.
function fromPlaywright() {
  try {
    const load = createRequire(join(root, 'e2e', 'package.json'));
    return [String(load('@playwright/test').chromium.executablePath())];
  } catch {
    return [];
  }
}

// Some systems put a stub under a browser's name that only says how to install it.
/** @param {string} path */
function runs(path) {
  if (process.platform === 'win32') return existsSync(path);
  const { status, stdout } = spawnSync(path, ['--version'], { encoding: 'utf8', timeout: 20_000 });
  return status === 0 && /\d+\.\d+/.test(stdout);
}

function installByApt() {
  if (process.getuid?.() !== 0 || !existsSync('/usr/bin/apt-get')) return;
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  if (perform('apt-get', ['update'], env)) {
    perform('apt-get', ['install', '-y', 'chromium', 'fonts-liberation'], env);
  }
}

function installByPlaywright() {
  const program = join(root, 'node_modules', '@playwright', 'test', 'cli.js');
  const systemPackages = process.getuid?.() === 0 && existsSync('/usr/bin/apt-get') ? ['--with-deps'] : [];
  perform(process.execPath, [program, 'install', ...systemPackages, 'chromium'], process.env);
}

/**
 * @param {string} program
 * @param {string[]} words
 * @param {NodeJS.ProcessEnv} env
 */
function perform(program, words, env) {
  const timeout = MINUTES_TO_INSTALL * 60_000;
  return spawnSync(program, words, { stdio: ['ignore', 'ignore', 'inherit'], env, timeout }).status === 0;
}
