// The lock on a data folder: two processes on one embedded database would ruin it without a word.

import { mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import { join } from 'node:path';
import { Refusal } from '@colla/refusal';
import { Refused } from './refused.ts';

/** Who holds a folder. `started` tells a process from a later one that was given the same number. */
interface Holder {
  readonly pid: number;
  readonly host: string;
  readonly started: string;
}

const NAME = /^books\.lock\.(\d+)$/;
/** A lock without a word in it is being written, or its writer died doing so; by then, surely the latter. */
const SECONDS_TO_WRITE = 10;

/**
 * Takes the folder for this process, making it where there is none, and gives the function that lets go of it.
 * Throws `Refused` where another process has it. A lock that a dead process left is taken over.
 *
 * Locks are numbered: to take over is to make the next number, which the file system grants to one process only.
 */
export function lockFolder(folder: string): () => void {
  makeFolder(folder);
  const last = numbersIn(folder).at(-1) ?? 0;
  if (last > 0 && isHeld(lockFile(folder, last))) throw inUse(folder);
  const number = last + 1;
  try {
    writeFileSync(lockFile(folder, number), JSON.stringify(myself()), { flag: 'wx' });
  } catch (reason) {
    throw (reason as NodeJS.ErrnoException).code === 'EEXIST' ? inUse(folder) : reason;
  }
  if (numbersIn(folder).at(-1) !== number) {
    rmSync(lockFile(folder, number), { force: true });
    throw inUse(folder);
  }
  for (const older of numbersIn(folder).filter((other) => other < number)) {
    rmSync(lockFile(folder, older), { force: true });
  }
  return () => writeFileSync(lockFile(folder, number), FREE);
}

const FREE = 'free';

function makeFolder(folder: string): void {
  try {
    mkdirSync(folder, { recursive: true });
  } catch {
    throw new Refused(
      new Refusal(
        'store/no-folder',
        `The data folder ${folder} cannot be made or entered. Choose another one by DATA_DIR.`,
        { folder },
      ),
    );
  }
}

function numbersIn(folder: string): number[] {
  return readdirSync(folder)
    .flatMap((name) => NAME.exec(name)?.[1] ?? [])
    .map(Number)
    .sort((a, b) => a - b);
}

function lockFile(folder: string, number: number): string {
  return join(folder, `books.lock.${number}`);
}

function isHeld(file: string): boolean {
  const text = readIfThere(file);
  if (text === undefined || text === FREE) return false;
  if (text === '') return ageInSeconds(file) < SECONDS_TO_WRITE;
  const { pid, host, started } = JSON.parse(text) as Holder;
  // Nobody here can see whether a process of another machine lives.
  return host !== hostname() || (isAlive(pid) && startOf(pid) === started);
}

function readIfThere(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8');
  } catch {
    return undefined;
  }
}

function ageInSeconds(file: string): number {
  return (Date.now() - statSync(file).mtimeMs) / 1000;
}

function myself(): Holder {
  return { pid: process.pid, host: hostname(), started: startOf(process.pid) };
}

function isAlive(pid: number): boolean {
  try {
    process.kill(pid, 0);
    return true;
  } catch (reason) {
    return (reason as NodeJS.ErrnoException).code === 'EPERM';
  }
}

/** When a process began, in the words of Linux (proc(5): field 22, after the name in brackets); elsewhere unknown. */
function startOf(pid: number): string {
  const status = readIfThere(`/proc/${pid}/stat`) ?? '';
  return status.slice(status.lastIndexOf(')') + 2).split(' ')[19] ?? '';
}

function inUse(folder: string): Refused {
  return new Refused(
    new Refusal(
      'store/folder-in-use',
      `The books in ${folder} are open in another program already. Stop that one first, or choose another folder by DATA_DIR.`,
      { folder },
    ),
  );
}
