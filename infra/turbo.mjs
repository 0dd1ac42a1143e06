// Runs turbo from node_modules, without its reports to its maker; what it says is shown when it fails.
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { root } from './root.mjs';

/**
 * @param {string[]} words
 * @returns {boolean} whether all went well
 */
export function turbo(words) {
  const program = join(root, 'node_modules', 'turbo', 'bin', 'turbo');
  const quiet = { TURBO_TELEMETRY_DISABLED: '1', DO_NOT_TRACK: '1', TURBO_NO_UPDATE_NOTIFIER: '1' };
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [program, ...words, '--output-logs=errors-only'],
    { cwd: root, encoding: 'utf8', env: { ...process.env, ...quiet } },
  );
  if (status !== 0) console.log(`${stdout}${stderr}`);
  return status === 0;
}
