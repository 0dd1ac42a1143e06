// What the screens ask of the books and what they write into them. An answer is kept, and shown at once when its screen
// is looked at again; whatever is written makes every kept answer old, and those in sight are asked for anew.
import type { AnswerOf, Problem, RequestOf, RouteName } from '@colla/wire';
import { createClient, ProblemError } from '@colla/wire/client';
import { useCallback, useEffect, useState, useSyncExternalStore } from 'react';

const client = createClient({ fetch: (...asked) => fetch(...asked) });

/** An answer on its way, here, or refused. While an old one is asked for anew it stays in sight. */
export type Answer<Value> =
  | { readonly is: 'loading' }
  | { readonly is: 'here'; readonly value: Value }
  | { readonly is: 'failed'; readonly problem: Problem; readonly again: () => void };

/** The routes that only read. */
export type Question = Extract<RouteName, `get${string}` | `list${string}` | 'previewStatement'>;

interface Kept {
  answer: Answer<unknown>;
  old: boolean;
  /** How often it was asked for: an answer to an earlier asking comes too late. */
  asked: number;
  readonly watchers: Set<() => void>;
}

const kept = new Map<string, Kept>();

/** Asks, and shows the answer as it comes: `useAnswer('getEngagement', { params: { id } })`. */
export function useAnswer<Name extends Question>(
  name: Name,
  request: RequestOf<Name>,
): Answer<AnswerOf<Name>> {
  const key = `${name} ${JSON.stringify(request)}`;
  const watch = useCallback((watcher: () => void) => watched(key, watcher), [key]);
  const answer = useSyncExternalStore(watch, () => keptAt(key).answer);
  useEffect(() => {
    askFor(key);
  }, [key]);
  return answer as Answer<AnswerOf<Name>>;
}

/** Asks once, for what no screen watches: a preview while something is being written. */
export function ask<Name extends RouteName>(name: Name, request: RequestOf<Name>): Promise<AnswerOf<Name>> {
  const route = client[name] as (request: RequestOf<Name>) => Promise<AnswerOf<Name>>;
  return route(request);
}

/** A writing route bound to a screen: `send(request)` gives the answer, or nothing where `problem` then says why. */
export interface Sending<Name extends RouteName> {
  readonly send: (request: RequestOf<Name>) => Promise<AnswerOf<Name> | undefined>;
  readonly busy: boolean;
  readonly problem: Problem | undefined;
  readonly forget: () => void;
}

export function useSend<Name extends RouteName>(name: Name): Sending<Name> {
  const [busy, setBusy] = useState(false);
  const [problem, setProblem] = useState<Problem>();
  const send = async (request: RequestOf<Name>) => {
    setBusy(true);
    try {
      const answer = await ask(name, request);
      setProblem(undefined);
      makeOld();
      return answer;
    } catch (no) {
      setProblem(problemOf(no));
      return undefined;
    } finally {
      setBusy(false);
    }
  };
  return { send, busy, problem, forget: () => setProblem(undefined) };
}

/** Says that what was kept may no longer be true. */
export function makeOld(): void {
  for (const [key, entry] of kept) {
    entry.old = true;
    if (entry.watchers.size === 0) kept.delete(key);
    else askFor(key);
  }
}

function askFor(key: string): void {
  const entry = keptAt(key);
  if (!entry.old) return;
  entry.old = false;
  entry.asked += 1;
  const turn = entry.asked;
  const settleInTurn = (answer: Answer<unknown>) => {
    if (entry.asked === turn) settle(entry, answer);
  };
  const at = key.indexOf(' ');
  ask(key.slice(0, at) as RouteName, JSON.parse(key.slice(at + 1))).then(
    (value) => settleInTurn({ is: 'here', value }),
    (no) => settleInTurn({ is: 'failed', problem: problemOf(no), again: () => askAgain(key) }),
  );
}

function askAgain(key: string): void {
  const entry = keptAt(key);
  settle(entry, { is: 'loading' });
  entry.old = true;
  askFor(key);
}

function settle(entry: Kept, answer: Answer<unknown>): void {
  entry.answer = answer;
  for (const watcher of entry.watchers) watcher();
}

function watched(key: string, watcher: () => void): () => void {
  const entry = keptAt(key);
  entry.watchers.add(watcher);
  return () => {
    entry.watchers.delete(watcher);
    // Shown at once when it is looked at again, and asked for anew.
    if (entry.watchers.size === 0) entry.old = true;
  };
}

function keptAt(key: string): Kept {
  const entry = kept.get(key) ?? { answer: { is: 'loading' }, old: true, asked: 0, watchers: new Set() };
  kept.set(key, entry);
  return entry;
}

function problemOf(no: unknown): Problem {
  if (no instanceof ProblemError) return no.problem;
  throw no;
}
