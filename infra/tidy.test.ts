// Small rules of the house that a compiler does not hold.
import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { pureRooms, rooms, sourcesOf, withoutComments } from './rooms.ts';
import { root } from './root.mjs';

const notInTheDomain: { words: RegExp; instead: string }[] = [
  { words: /\bDate\.now\b|\bperformance\.now\b/, instead: 'take `now` as an argument' },
  { words: /\bnew Date\(/, instead: 'use the days and instants of @colla/calendar' },
  { words: /\bTemporal\.Now\b/, instead: 'take `now` as an argument' },
  { words: /\bMath\.random\b|\brandomUUID\b/, instead: 'take `newId` as an argument, or a seed' },
  {
    words: /\bparseFloat\b/,
    instead: 'use the readers of @colla/money and @colla/hours: whole minor units and minutes',
  },
  { words: /\bprocess\.|['"]node:/, instead: 'hand it in from the app' },
  { words: /\bfetch\(/, instead: 'ask in the app, and hand in the answer' },
];

const nounless = ['core', 'common', 'shared', 'utils', 'helpers', 'lib', 'services', 'managers'];

test('the domain has no clock, chance, machine or floating amount of its own', () => {
  const sources = rooms()
    .filter((room) => pureRooms.includes(room.name))
    .flatMap(sourcesOf)
    .filter((file) => !file.isTest);
  const found = sources.flatMap(({ path, text }) =>
    notInTheDomain
      .filter(({ words }) => words.test(withoutComments(text)))
      .map(({ words, instead }) => `${path} has ${words.exec(text)?.[0]}: ${instead}`),
  );
  expect(found).toEqual([]);
});

test('every folder is named by a noun that one can say aloud', () => {
  const folders = ['apps', 'packages', 'infra', 'e2e'].flatMap((name) => foldersUnder(name));
  expect(folders.filter((folder) => nounless.includes(folder.split('/').at(-1) ?? ''))).toEqual([]);
});

test('no type is waved through and no test is passed over', () => {
  // biome refuses `any`; these would get past it.
  const waved = /@ts-(ignore|expect-error|nocheck)|\b(test|it|describe)\.(skip|only|todo)\b/;
  const files = rooms()
    .flatMap(sourcesOf)
    .filter(({ path }) => path !== 'infra/tidy.test.ts');
  expect(files.filter(({ text }) => waved.test(text)).map(({ path }) => path)).toEqual([]);
});

function foldersUnder(folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true })
    .filter(
      (entry) => entry.isDirectory() && !['node_modules', 'dist', 'output', '.turbo'].includes(entry.name),
    )
    .flatMap((entry) => [`${folder}/${entry.name}`, ...foldersUnder(`${folder}/${entry.name}`)]);
}
