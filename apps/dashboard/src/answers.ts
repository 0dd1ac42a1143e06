// Keeps what was answered, so that a screen that is looked at again shows it at once while it is asked for anew.
import type { Problem } from '@colla/wire';

/** An answer on its way, here, or refused. While an old one is asked for anew it stays in sight. */
export type Answer<Value> =
  | { readonly is: 'loading' }
  | { readonly is: 'here'; readonly value: Value }
  | { readonly is: 'failed'; readonly problem: Problem; readonly again: () => void };

export interface Answers {
  /** What is known of a question now. */
  readonly at: (key: string) => Answer<unknown>;
  /** Asks, unless what is kept is fresh. */
  readonly askFor: (key: string) => void;
  /** Calls back at every change, until the returned function is called. */
  readonly watch: (key: string, watcher: () => void) => () => void;
  /** Says that nothing kept may still be true: what is in sight is asked for anew, the rest forgotten. */
  readonly makeOld: () => void;
}

interface Kept {
  answer: Answer<unknown>;
  old: boolean;
  /** How often it was asked for: an answer to an earlier asking comes too late. */
  asked: number;
  readonly watchers: Set<() => void>;
}

/** Keeps answers by their question's key. `ask` fetches one; `problemOf` reads why it did not. */
export function keepAnswers(
  ask: (key: string) => Promise<unknown>,
  problemOf: (reason: unknown) => Problem,
): Answers {
  const kept = new Map<string, Kept>();

  const entryAt = (key: string): Kept => {
    const entry = kept.get(key) ?? { answer: { is: 'loading' }, old: true, asked: 0, watchers: new Set() };
    kept.set(key, entry);
    return entry;
  };

  const askFor = (key: string) => {
    const entry = entryAt(key);
    if (!entry.old) return;
    entry.old = false;
    entry.asked += 1;
    const turn = entry.asked;
    const settleInTurn = (answer: Answer<unknown>) => {
      if (entry.asked === turn) settle(entry, answer);
    };
    ask(key).then(
      (value) => settleInTurn({ is: 'here', value }),
      (reason) => settleInTurn({ is: 'failed', problem: problemOf(reason), again: () => askAgain(key) }),
    );
  };

  const askAgain = (key: string) => {
    const entry = entryAt(key);
    settle(entry, { is: 'loading' });
    entry.old = true;
    askFor(key);
  };

  return {
    at: (key) => entryAt(key).answer,
    askFor,
    watch: (key, watcher) => {
      const entry = entryAt(key);
      entry.watchers.add(watcher);
      return () => {
        entry.watchers.delete(watcher);
        if (entry.watchers.size === 0) entry.old = true;
      };
    },
    makeOld: () => {
      for (const [key, entry] of kept) {
        entry.old = true;
        if (entry.watchers.size === 0) kept.delete(key);
        else askFor(key);
      }
    },
  };
}

function settle(entry: Kept, answer: Answer<unknown>): void {
  entry.answer = answer;
  for (const watcher of entry.watchers) watcher();
}
