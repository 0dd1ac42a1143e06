// A practice for tests: the real server on real books, asked over HTTP as a browser asks.

import { tmpdir } from 'node:os';
import { Temporal } from '@colla/calendar';
import { invoicePdf } from '@colla/paper';
import { databases as kinds, type Trial } from '@colla/store/trial';
import { type Problem, type RouteName, routes } from '@colla/wire';
import { type Client, createClient, ProblemError } from '@colla/wire/client';
import { v4, v7 } from 'uuid';
import { expect } from 'vitest';
import { createApp } from '../src/app.ts';
import { firstOrganisation } from '../src/first.ts';
import { addressOf, listen, stop } from '../src/listen.ts';

/** The databases every suite runs on: their name, and how books of their own begin. */
export const databases = kinds.map(({ name, begin }) => [name, begin] as const);

/** A browser that used a printed address, or none. */
export interface Browser {
  readonly client: Client;
  readonly fetch: typeof fetch;
}

export interface Practice {
  readonly address: string;
  readonly key: string;
  readonly browser: Browser;
  /** Somebody who never saw a key. */
  readonly stranger: Browser;
  /** What the clock shows from now on. */
  readonly setClock: (instant: string) => void;
  readonly close: () => Promise<void>;
}

/** When a practice opens, by its own clock. */
export const OPENED = '2026-10-20T09:00:00Z';

/** Opens a practice whose first visitor has come in already. `dashboard` is the folder of its pages. */
export async function openPractice(
  begin: () => Promise<Trial>,
  { dashboard = tmpdir(), enter = true }: { dashboard?: string; enter?: boolean } = {},
): Promise<Practice> {
  let clock = Temporal.Instant.from(OPENED);
  const trial = await begin();
  const { store } = trial;
  const key = v4();
  const app = createApp({
    store,
    paper: { invoicePdf },
    now: () => clock,
    newId: v7,
    newKey: v4,
    invitation: {
      key,
      organisation: await firstOrganisation(store, { newId: v7, runtimeZone: 'Europe/London' }),
    },
    dashboard,
  });
  const server = await listen(app, 0);
  const address = addressOf(server);
  return {
    address,
    key,
    browser: browserAt(address, enter ? await cookieFor(address, key) : undefined),
    stranger: browserAt(address, undefined),
    setClock: (instant) => {
      clock = Temporal.Instant.from(instant);
    },
    close: async () => {
      await stop(server);
      await trial.end();
    },
  };
}

/** The cookie a browser is given for a key. */
export async function cookieFor(address: string, key: string): Promise<string> {
  const response = await fetch(`${address}/?key=${key}`, { redirect: 'manual' });
  return response.headers.get('set-cookie')?.split(';')[0] ?? '';
}

/** Sends what a browser sends from the practice's own pages. Addresses start at its root. */
export function browserAt(address: string, cookie: string | undefined): Browser {
  const visit: typeof fetch = (path, how = {}) => {
    const headers = new Headers(how.headers);
    if (cookie !== undefined) headers.set('cookie', cookie);
    if (!headers.has('origin')) headers.set('origin', address);
    return fetch(`${address}${path}`, { ...how, headers, redirect: 'manual' });
  };
  return { fetch: visit, client: checked(createClient({ fetch: visit })) };
}

/** A client whose every answer is held to the schema its route publishes: nothing missing, nothing more. */
function checked(client: Client): Client {
  const names = Object.keys(routes) as RouteName[];
  const ask = (name: RouteName) => async (request: never, how: never) => {
    const answer = await client[name](request, how);
    expect(routes[name].answer.parse(answer)).toEqual(answer);
    return answer;
  };
  return Object.fromEntries(names.map((name) => [name, ask(name)])) as unknown as Client;
}

/** The problem that an asking ends in. */
export async function problemOf(asking: Promise<unknown>): Promise<Problem> {
  const error = await asking.then(
    () => undefined,
    (reason: unknown) => reason,
  );
  if (error instanceof ProblemError) return error.problem;
  throw new Error('it was answered, or failed without a problem', { cause: error });
}
