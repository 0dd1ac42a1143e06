// What the screens ask of the books and what they write into them. Whatever is written makes every kept answer old, and
// those in sight are asked for anew.
import type { AnswerOf, Problem, RequestOf, RouteName } from '@colla/wire';
import { createClient, ProblemError } from '@colla/wire/client';
import { useCallback, useEffect, useState, useSyncExternalStore } from 'react';
import { type Answer, keepAnswers } from './answers.ts';
import { sayDaysIn } from './locale.ts';

export type { Answer } from './answers.ts';

const client = createClient({ fetch: (...asked) => fetch(...asked) });

/** The routes that only read. */
export type Question = Extract<RouteName, `get${string}` | `list${string}` | 'previewStatement'>;

const answers = keepAnswers((key) => {
  const at = key.indexOf(' ');
  return ask(key.slice(0, at) as RouteName, JSON.parse(key.slice(at + 1)));
}, problemOf);

/** Asks, and shows the answer as it comes: `useAnswer('getEngagement', { params: { id } })`. */
export function useAnswer<Name extends Question>(
  name: Name,
  request: RequestOf<Name>,
): Answer<AnswerOf<Name>> {
  const key = `${name} ${JSON.stringify(request)}`;
  const watch = useCallback((watcher: () => void) => answers.watch(key, watcher), [key]);
  const answer = useSyncExternalStore(watch, () => answers.at(key));
  useEffect(() => {
    answers.askFor(key);
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
      answers.makeOld();
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

function problemOf(no: unknown): Problem {
  if (no instanceof ProblemError) return inTheirDays(no.problem);
  throw no;
}

/** The books say days by ISO 8601; whoever reads them says them otherwise. */
function inTheirDays(problem: Problem): Problem {
  const { detail, errors } = problem;
  return {
    ...problem,
    detail: sayDaysIn(detail),
    ...(errors ? { errors: errors.map((error) => ({ ...error, detail: sayDaysIn(error.detail) })) } : {}),
  };
}
