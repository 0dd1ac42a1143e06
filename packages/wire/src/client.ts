// Asks the API by the table of paths: one function a route, typed by its schemas. Loads no schema itself, so that a
// browser that only asks carries no validator.

import { paths, problemType } from './paths.ts';
import type { Problem } from './problem.ts';
import type { AnswerOf, RequestOf, RouteName } from './routes.ts';
import { submissions } from './submission.ts';

export { paths } from './paths.ts';
export type { AnswerOf, RequestOf, RouteName } from './routes.ts';

/** The API's “no”, thrown: `problem` says in a sentence what is wrong and how to mend it. */
export class ProblemError extends Error {
  constructor(readonly problem: Problem) {
    super(problem.detail);
    this.name = 'ProblemError';
  }
}

/** Whether a problem comes from a refusal of this code, such as `invoicing/more-than-owed`. */
export function isProblemOf(problem: Problem, code: string): boolean {
  return problem.type === problemType(code);
}

interface How {
  /** The answer that an edit is made from: it is refused where that is not so any more, with what changed. */
  readonly seen?: object;
  /** Gives the question up; the call then throws the reason of the abort. */
  readonly signal?: AbortSignal;
}
type Asked<Request> =
  Partial<Request> extends Request ? [request?: Request, how?: How] : [request: Request, how?: How];

/** One function for each route: `client.getEngagement({ params: { id } })`. */
export type Client = {
  readonly [Name in RouteName]: (...asked: Asked<RequestOf<Name>>) => Promise<AnswerOf<Name>>;
};

export interface Asking {
  readonly fetch: typeof fetch;
  /** Where the API is; `/api` of the same origin where left out. */
  readonly base?: string;
}

/**
 * A client that asks by `fetch`. Every function throws `ProblemError` where the answer is “no” or none comes. What
 * is kept goes under a key of its own: a double click is one request, and where no answer came it is asked again.
 */
export function createClient(asking: Asking): Client {
  const names = Object.keys(paths) as RouteName[];
  const submit = submissions(isLost);
  const tags = new WeakMap<object, string>();
  const ask =
    (name: RouteName) =>
    (request: Sent = {}, how: How = {}) => {
      const tag = how.seen && tags.get(how.seen);
      const send = (key?: string) => answerTo(name, request, { ...how, key, tag, tags }, asking);
      return isKept(name) ? submit(JSON.stringify([name, request, tag]), send) : send();
    };
  return Object.fromEntries(names.map((name) => [name, ask(name)])) as unknown as Client;
}

/** Where the PDF of an invoice is. */
export function invoicePdfAddress(id: string, base = '/api'): string {
  return `${base}/invoices/${encodeURIComponent(id)}/pdf`;
}

/** Whether a route changes the books. */
function isKept(name: RouteName): boolean {
  const route: { readonly method: string; readonly keeps?: false } = paths[name];
  return route.method !== 'get' && route.keeps !== false;
}

/** No answer came, so nobody knows whether it was done. */
function isLost(reason: unknown): boolean {
  return reason instanceof ProblemError && reason.problem.status === 0;
}

interface Sent {
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, unknown>>;
  readonly body?: unknown;
}

/** The key of a request, the tag of what it was made from, and the tags of all answers. */
interface Marks {
  readonly key: string | undefined;
  readonly tag: string | undefined;
  readonly tags: WeakMap<object, string>;
}

async function answerTo(name: RouteName, sent: Sent, how: How & Marks, asking: Asking): Promise<unknown> {
  const { method, path } = paths[name];
  const address = `${asking.base ?? '/api'}${filled(path, sent.params)}${queryText(sent.query)}`;
  // A browser's fetch must be called bare, never as a method of another object.
  const { fetch } = asking;
  const response = await heard(
    fetch(address, { method: method.toUpperCase(), ...sendingOf(sent, how), ...signalOf(how) }),
  );
  const answer: unknown = await response.json().catch(() => undefined);
  if (response.ok && typeof answer === 'object' && answer !== null) {
    const tag = response.headers.get('etag');
    if (tag !== null) how.tags.set(answer, tag);
    return answer;
  }
  throw new ProblemError(isProblem(answer) ? answer : unreadable(response.status));
}

function signalOf({ signal }: How): Pick<RequestInit, 'signal'> {
  return signal ? { signal } : {};
}

function filled(path: string, params: Sent['params']): string {
  return path.replace(/:(\w+)/g, (_, name: string) => encodeURIComponent(params?.[name] ?? ''));
}

function queryText(query: Sent['query'] = {}): string {
  const given = Object.entries(query).filter(([, value]) => value !== undefined);
  return given.length === 0
    ? ''
    : `?${given.map(([name, value]) => `${name}=${encodeURIComponent(String(value))}`).join('&')}`;
}

function sendingOf({ body }: Sent, { key, tag }: Marks): Pick<RequestInit, 'headers' | 'body'> {
  const headers = {
    ...(body === undefined ? {} : { 'content-type': 'application/json' }),
    ...(key === undefined ? {} : { 'idempotency-key': `"${key}"` }),
    ...(tag === undefined ? {} : { 'if-match': tag }),
  };
  return { headers, ...(body === undefined ? {} : { body: JSON.stringify(body) }) };
}

/** The response, or a problem in the place of a failed connection; an abort stays what it is. */
async function heard(response: Promise<Response>): Promise<Response> {
  try {
    return await response;
  } catch (reason) {
    if (reason instanceof Error && reason.name === 'TypeError') throw new ProblemError(noAnswer);
    throw reason;
  }
}

function isProblem(answer: unknown): answer is Problem {
  return typeof answer === 'object' && answer !== null && 'detail' in answer && 'status' in answer;
}

/** Fetch says “TypeError” for every way in which no answer came. Status 0 stands for none. */
const noAnswer: Problem = {
  type: 'about:blank',
  title: 'No answer',
  status: 0,
  detail: 'The program that keeps the books does not answer. Start it again, then try once more.',
};

function unreadable(status: number): Problem {
  return {
    type: 'about:blank',
    title: 'Unreadable answer',
    status,
    detail: 'The answer could not be read. Load the page again; if it stays so, start the program again.',
  };
}
