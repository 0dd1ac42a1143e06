// The folder of the repository, and how a command says why it cannot go on.
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('..', import.meta.url));

/**
 * Ends the command with one sentence instead of a stack.
 * @param {string} sentence
 * @returns {never}
 */
export function stopWith(sentence) {
  console.error(sentence);
  process.exit(1);
}

// npm starts a command through a shell, and a signal to npm reaches that shell alone: the command would live on.
export function endWithNpm() {
  if (process.env.npm_lifecycle_event === undefined) return;
  const parent = process.ppid;
  const watch = setInterval(() => {
    if (process.ppid === parent) return;
    clearInterval(watch);
    process.kill(process.pid, 'SIGTERM');
  }, 300);
  watch.unref();
}
