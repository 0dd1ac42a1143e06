import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { KINDS } from './problems.ts';

const packages = fileURLToPath(new URL('../../../packages', import.meta.url));
const here = fileURLToPath(new URL('.', import.meta.url));
/** Refusals of a start: they are printed, and never go over HTTP. */
const AT_THE_START = /^(config|store\/(no-folder|folder-in-use|no-server|old-server|no-rights))/;

test('every refusal that the program can say has its status and title', () => {
  const sources = [packages, here].flatMap(filesUnder).map((file) => readFileSync(file, 'utf8'));
  const codes = sources.flatMap((text) => [
    ...[...text.matchAll(/new Refusal\(\s*'([a-z]+\/[a-z-]+)'/g)].map(([, code]) => code ?? ''),
  ]);
  expect(codes.length).toBeGreaterThan(40);
  const overHttp = codes.filter((code) => !AT_THE_START.test(code));
  expect(overHttp.filter((code) => !(code in KINDS))).toEqual([]);
});

test('every status of a refusal is a “no” of HTTP', () => {
  expect(Object.values(KINDS).filter(([status]) => status < 400 || status > 599)).toEqual([]);
});

function filesUnder(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true, recursive: true })
    .filter((entry) => entry.isFile() && /\.ts$/.test(entry.name) && !entry.name.includes('.test.'))
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((file) => !file.includes('node_modules'));
}
