// Builds what changed. The quick look compares names, sizes and times of the sources with those of the last
// build; only when they differ does turbo look at the contents, and it builds again what they changed.
import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { root, stopWith } from './root.mjs';
import { turbo } from './turbo.mjs';

const STAMP = join(root, '.stamps', 'build');
const SOURCES = ['apps', 'packages', 'package-lock.json', 'tsconfig.base.json', 'turbo.json'];
const BUILT = ['apps/api/dist/main.js', 'apps/dashboard/dist/index.html', 'packages/store/dist/templates'];
const PASSED_OVER = new Set(['node_modules', 'dist', '.turbo']);

export function build() {
  const seen = fingerprint();
  if (seen === stampOfLastBuild() && BUILT.every((file) => existsSync(join(root, file)))) return;
  console.log('Building what changed.');
  rmSync(STAMP, { force: true });
  if (!turbo(['run', 'build'])) {
    stopWith('The build failed: the reason is above.');
  }
  mkdirSync(join(root, '.stamps'), { recursive: true });
  writeFileSync(STAMP, seen);
}

function stampOfLastBuild() {
  return existsSync(STAMP) ? readFileSync(STAMP, 'utf8') : undefined;
}

function fingerprint() {
  const hash = createHash('sha1').update(process.version);
  for (const source of SOURCES) addTo(hash, join(root, source));
  return hash.digest('hex');
}

/**
 * @param {import('node:crypto').Hash} hash
 * @param {string} path
 */
function addTo(hash, path) {
  const found = statSync(path);
  if (found.isFile()) {
    hash.update(`${path} ${found.size} ${found.mtimeMs}\n`);
    return;
  }
  for (const name of readdirSync(path).sort()) {
    if (!PASSED_OVER.has(name) && !name.includes('.test.')) addTo(hash, join(path, name));
  }
}
