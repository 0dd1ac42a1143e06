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
