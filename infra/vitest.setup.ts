// A stray console.error fails the test that let it out.
import { afterEach, beforeEach, vi } from 'vitest';

beforeEach(() => {
  vi.spyOn(console, 'error').mockImplementation(() => undefined);
});

afterEach(() => {
  const said = vi.mocked(console.error).mock.calls.map((words) => words.join(' '));
  vi.mocked(console.error).mockRestore();
  if (said.length > 0) throw new Error(`console.error was called: ${said.join('; ')}`);
});
