// The rooms of the house know only what they may: read from their imports, held against one table.
import { dirname, join, relative } from 'node:path';
import { describe, expect, test } from 'vitest';
import {
  importsOf,
  manifestOf,
  mayImport,
  mayImportFromOutside,
  type Room,
  rooms,
  type SourceFile,
  sourcesOf,
} from './rooms.ts';

const house = rooms();
const forTests = Object.keys(manifestOf('.').devDependencies ?? {});

test('every room has its place in the table of who may import whom', () => {
  expect(house.map((room) => room.name).sort()).toEqual(Object.keys(mayImport).sort());
});

describe.each(house.map((room) => [room.folder, room] as const))('%s', (_, room) => {
  test('declares only rooms that it may import', () => {
    const declared = Object.keys(declaredBy(room)).filter(isRoom).map(roomName);
    expect(declared.filter((name) => !mayImport[room.name]?.includes(name))).toEqual([]);
  });

  test('imports only what it declares, and only what it may', () => {
    expect(sourcesOf(room).flatMap((file) => wrongImports(room, file))).toEqual([]);
  });

  test('is left by no relative path', () => {
    const leaves = sourcesOf(room).flatMap((file) =>
      importsOf(file.text)
        .filter((module) => module.startsWith('.') && !within(room, file, module))
        .map((module) => `${file.path} imports ${module}`),
    );
    expect(leaves).toEqual([]);
  });

  test('has no files that import one another in a circle', () => {
    expect(circleAmong(sourcesOf(room))).toEqual([]);
  });
});

test('no room is imported, by whatever way round, from a room that it imports', () => {
  const reach = (name: string, seen: string[] = []): string[] =>
    seen.includes(name)
      ? [...seen, name]
      : (mayImport[name] ?? []).flatMap((next) => reach(next, [...seen, name]));
  expect(Object.keys(mayImport).filter((name) => reach(name).includes(name))).toEqual([]);
});

test('a feature of the dashboard never imports a sibling', () => {
  const dashboard = house.filter((room) => room.name === 'dashboard').flatMap(sourcesOf);
  const crossings = dashboard.flatMap((file) =>
    importsOf(file.text)
      .map((module) => join(dirname(file.path), module))
      .filter(
        (target) => featureOf(file.path) && featureOf(target) && featureOf(file.path) !== featureOf(target),
      )
      .map((target) => `${file.path} imports ${target}`),
  );
  expect(crossings).toEqual([]);
});

test('a control of the dashboard knows no noun', () => {
  const controls = house
    .filter((room) => room.name === 'dashboard')
    .flatMap(sourcesOf)
    .filter(isControl);
  const known = controls.flatMap((file) =>
    importsOf(file.text)
      .filter((module) => /(^|\/)(features|pages)\//.test(module))
      .map((module) => `${file.path} imports ${module}`),
  );
  expect(known).toEqual([]);
});

function declaredBy(room: Room): Record<string, string> {
  return { ...room.manifest.dependencies, ...room.manifest.devDependencies };
}

function isRoom(module: string): boolean {
  return module.startsWith('@colla/');
}

function roomName(module: string): string {
  return module.split('/')[1] ?? module;
}

function wrongImports(room: Room, file: SourceFile): string[] {
  return importsOf(file.text).flatMap((module) => {
    const why = module.startsWith('.') ? undefined : whyNot(room, file, module);
    return why ? [`${file.path} imports ${module}: ${why}`] : [];
  });
}

function whyNot(room: Room, file: SourceFile, module: string): string | undefined {
  const name = packageName(module);
  if (module.startsWith('node:'))
    return mayReachTheMachine(room, file) ? undefined : 'no machine in this room';
  if (name === `@colla/${room.name}`) return 'a room does not import itself by name';
  if (file.isTest && forTests.includes(name)) return undefined;
  if (!isDeclared(room, file, name)) return 'not declared in its package.json';
  if (isRoom(module)) return mayImport[room.name]?.includes(roomName(module)) ? undefined : 'not below it';
  const outside = mayImportFromOutside[room.name];
  return !outside || outside.includes(name) || !isShipped(file) ? undefined : 'not among its libraries';
}

function packageName(module: string): string {
  const [first = module, second = ''] = module.split('/');
  return first.startsWith('@') ? `${first}/${second}` : first;
}

function isDeclared(room: Room, file: SourceFile, name: string): boolean {
  const onlyInDevelopment = !isShipped(file) && (name in declaredBy(room) || forTests.includes(name));
  return name in (room.manifest.dependencies ?? {}) || onlyInDevelopment;
}

// What is in src and no test goes to whoever runs the program; the rest only to who works on it.
function isShipped(file: SourceFile): boolean {
  return file.path.includes('/src/') && !file.isTest;
}

function mayReachTheMachine(room: Room, file: SourceFile): boolean {
  return !(room.name in mayImportFromOutside) || !isShipped(file);
}

function within(room: Room, file: SourceFile, module: string): boolean {
  return !relative(room.folder, join(dirname(file.path), module)).startsWith('..');
}

function circleAmong(files: SourceFile[]): string[] {
  const byPath = new Map(files.map((file) => [bare(file.path), file]));
  const done = new Set<string>();
  const follow = (path: string, trail: string[]): string[] => {
    if (trail.includes(path)) return [...trail.slice(trail.indexOf(path)), path];
    const file = byPath.get(path);
    if (!file || done.has(path)) return [];
    for (const module of importsOf(file.text, { types: false }).filter((name) => name.startsWith('.'))) {
      const circle = follow(bare(join(dirname(file.path), module)), [...trail, path]);
      if (circle.length > 0) return circle;
    }
    done.add(path);
    return [];
  };
  for (const path of byPath.keys()) {
    const circle = follow(path, []);
    if (circle.length > 0) return circle;
  }
  return [];
}

function bare(path: string): string {
  return path.replace(/\.(tsx?|mjs|js)$/, '');
}

function featureOf(path: string): string | undefined {
  return /^apps\/dashboard\/src\/features\/([^/.]+)/.exec(path)?.[1];
}

function isControl(file: SourceFile): boolean {
  return file.path.startsWith('apps/dashboard/src/ui/');
}
