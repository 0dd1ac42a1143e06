// Runs turbo from node_modules, without its reports to its maker.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { root } from './root.mjs';

/**
 * @param {string[]} words
 * @returns {number} the exit code
 */
export function turbo(words) {
  const program = join(root, 'node_modules', 'turbo', 'bin', 'turbo');
  const quiet = { TURBO_TELEMETRY_DISABLED: '1', DO_NOT_TRACK: '1', TURBO_NO_UPDATE_NOTIFIER: '1' };
  const { status } = spawnSync(process.execPath, [program, ...words], {
    cwd: root,
    stdio: 'inherit',
    env: { ...process.env, ...quiet },
  });
  return status ?? 1;
}
