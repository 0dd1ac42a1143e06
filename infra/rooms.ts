// What the guards know of the house: its rooms, what each may import, and how the imports of a file are read.
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { root } from './root.mjs';

export interface Room {
  readonly name: string;
  /** from the root of the repository, as `packages/money` */
  readonly folder: string;
  readonly manifest: Manifest;
}

export interface Manifest {
  readonly dependencies?: Record<string, string>;
  readonly devDependencies?: Record<string, string>;
  readonly exports?: Record<string, string>;
}

export interface SourceFile {
  /** from the root of the repository */
  readonly path: string;
  readonly text: string;
  readonly isTest: boolean;
}

const facts = ['calendar', 'money', 'refusal'];
const domain = [...facts, 'bank', 'engagements', 'hours', 'invoicing', 'ledger', 'rates', 'travel'];

/** Each room, and the rooms that it may import: the order of house.md, facts below, documents above. */
export const mayImport: Record<string, readonly string[]> = {
  refusal: [],
  money: ['refusal'],
  calendar: ['refusal'],
  bank: facts,
  ledger: facts,
  hours: facts,
  travel: facts,
  rates: [...facts, 'hours', 'travel'],
  engagements: [...facts, 'hours', 'travel', 'rates'],
  invoicing: [...facts, 'bank', 'hours', 'travel', 'rates', 'engagements', 'ledger'],
  example: domain,
  wire: domain,
  store: domain,
  paper: domain,
  api: [...domain, 'example', 'paper', 'store', 'wire', 'infra'],
  dashboard: [...domain, 'example', 'wire'],
  e2e: [...domain, 'example', 'infra'],
  infra: [...domain, 'example', 'paper', 'store', 'wire'],
};

export const pureRooms = [...domain, 'example'];

/** Packages from outside that each room may name; a room that is not listed may name what it declares. */
export const mayImportFromOutside: Record<string, readonly string[]> = {
  ...Object.fromEntries(pureRooms.map((name) => [name, []])),
  money: ['dinero.js'],
  calendar: ['temporal-polyfill'],
  bank: ['ibantools', 'qr', 'saxes'],
  rates: ['zod'],
  wire: ['zod'],
  dashboard: ['react', 'react-dom', 'chart.js', 'wouter'],
};

export function rooms(): Room[] {
  const inFolder = (parent: string) => readdirSync(join(root, parent)).map((name) => `${parent}/${name}`);
  return [...inFolder('packages'), ...inFolder('apps'), 'e2e', 'infra']
    .filter((folder) => existsSync(join(root, folder, 'package.json')))
    .map((folder) => ({ name: nameOf(folder), folder, manifest: manifestOf(folder) }));
}

export function manifestOf(folder: string): Manifest {
  return JSON.parse(readFileSync(join(root, folder, 'package.json'), 'utf8')) as Manifest;
}

function nameOf(folder: string): string {
  return folder.split('/').at(-1) ?? folder;
}

export function sourcesOf(room: Room): SourceFile[] {
  return filesUnder(join(root, room.folder)).map((path) => ({
    path: relative(root, path),
    text: readFileSync(path, 'utf8'),
    isTest: path.includes('.test.') || path.includes('.spec.'),
  }));
}

const PASSED_OVER = ['node_modules', 'dist', 'output', '.turbo'];

function filesUnder(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    if (PASSED_OVER.includes(entry.name)) return [];
    if (entry.isDirectory()) return filesUnder(join(folder, entry.name));
    return /\.(ts|tsx|mjs)$/.test(entry.name) ? [join(folder, entry.name)] : [];
  });
}

/** Every module that a file names in an import, an export from, or an `import()`; types only when asked. */
export function importsOf(text: string, { types = true } = {}): string[] {
  const code = withoutComments(text);
  const named = /^\s*(?:import|export)\s+(type\s)?[^'";]*?from\s*['"]([^'"]+)['"]/gm;
  const bare = /^\s*import\s*['"]([^'"]+)['"]/gm;
  const lazy = /\bimport\(\s*['"]([^'"]+)['"]\s*\)/g;
  return [
    ...[...code.matchAll(named)].filter((found) => types || !found[1]).map((found) => found[2]),
    ...[...code.matchAll(bare), ...code.matchAll(lazy)].map((found) => found[1]),
  ].filter((module) => module !== undefined);
}

/** The code without what is said beside it, for guards that look for words. */
export function withoutComments(text: string): string {
  return text
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/^\s*\/\/.*$/gm, '')
    .replace(/\s\/\/ .*$/gm, '');
}
