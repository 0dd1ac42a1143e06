// Installs what the lockfile names and node_modules lacks. Plain JavaScript without a dependency, because it
// runs before anything is installed; when nothing is missing it reads two files and returns.
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root, stopWith } from './root.mjs';

const STAMP = join(root, 'node_modules', '.installed');
const OLDEST_NODE = [20, 19];

export function install() {
  requireNode();
  if (isInstalled()) return;
  console.log('Installing what is missing, from the lockfile. This takes a minute the first time.');
  const { status } = npm(['ci', '--include=dev', '--no-audit', '--no-fund']);
  if (status !== 0) {
    stopWith('The packages could not be installed: npm says why above. Is the npm registry within reach?');
  }
  writeFileSync(STAMP, lockfileDigest());
}

export function requireNode() {
  const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);
  const [oldestMajor = 0, oldestMinor = 0] = OLDEST_NODE;
  if (major > oldestMajor || (major === oldestMajor && minor >= oldestMinor)) return;
  stopWith(
    `Colla Parte needs Node ${OLDEST_NODE.join('.')} or newer; this is Node ${process.versions.node}.`,
  );
}

function isInstalled() {
  return (existsSync(STAMP) && readFileSync(STAMP, 'utf8') === lockfileDigest()) || everyPackageIsThere();
}

function lockfileDigest() {
  return createHash('sha256')
    .update(readFileSync(join(root, 'package-lock.json')))
    .digest('hex');
}

// What a person installed by hand counts too. npm writes node_modules/.package-lock.json last of all, so an
// interrupted install does not count as one.
function everyPackageIsThere() {
  const wanted = packagesOf('package-lock.json');
  const present = packagesOf('node_modules/.package-lock.json');
  if (!wanted || !present) return false;
  return Object.entries(wanted).every(([path, entry]) => {
    if (!path.includes('node_modules/') || entry.optional || entry.peer) return true;
    const found = present[path];
    return found !== undefined && found.version === entry.version && found.integrity === entry.integrity;
  });
}

/**
 * @typedef {{ version?: string, integrity?: string, optional?: boolean, peer?: boolean }} Entry
 * @param {string} lockfile
 * @returns {Record<string, Entry> | undefined}
 */
function packagesOf(lockfile) {
  try {
    return JSON.parse(readFileSync(join(root, lockfile), 'utf8')).packages;
  } catch {
    return undefined;
  }
}

/** @param {string[]} words */
function npm(words) {
  const script = process.env.npm_execpath;
  if (script?.endsWith('.js')) {
    return spawnSync(process.execPath, [script, ...words], { cwd: root, stdio: 'inherit' });
  }
  return spawnSync('npm', words, { cwd: root, stdio: 'inherit', shell: process.platform === 'win32' });
}
