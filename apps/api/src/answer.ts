// Binds the table of routes to Express: what is asked is read by the route's schemas before its handler sees it, and
// a handler can only answer what its route promises. One request is one transaction, and a GET can change nothing.

import type { Temporal } from '@colla/calendar';
import type { Books, Store } from '@colla/store';
import {
  type AnswerOf,
  type ParamsOf,
  type Route,
  type RouteName,
  type Routes,
  readBy,
  routes,
} from '@colla/wire';
import { type Request, type Response, Router } from 'express';
import { z } from 'zod';
import { answeredOnce, onceOf } from './once.ts';
import type { Paper } from './paper.ts';
import { NotFound, NotRead } from './problems.ts';
import { mustBeAsSeen, tagOf } from './seen.ts';

type Read<Of, Part extends 'query' | 'body'> =
  Of extends Record<Part, infer Schema extends z.ZodType> ? z.output<Schema> : undefined;

/** What a handler is given: the request as its route's schemas read it, the books, the clock and the source of ids. */
export interface Ask<Name extends RouteName> {
  readonly params: Readonly<Record<ParamsOf<Routes[Name]['path']>, string>>;
  readonly query: Read<Routes[Name], 'query'>;
  readonly body: Read<Routes[Name], 'body'>;
  readonly books: Books;
  readonly now: Temporal.Instant;
  readonly newId: () => string;
  readonly paper: Paper;
}

export type Handlers = { readonly [Name in RouteName]: (ask: Ask<Name>) => Promise<AnswerOf<Name>> };

export interface Means {
  readonly store: Store;
  readonly now: () => Temporal.Instant;
  readonly newId: () => string;
  readonly paper: Paper;
}

/** A response to somebody whose session was looked up. */
export type Admitted = Response<unknown, { organisation: string }>;

export function answerAll(handlers: Handlers, desk: Means): Router {
  const router = Router();
  for (const name of Object.keys(routes) as RouteName[]) {
    const route: Route = routes[name];
    const handle = handlers[name] as unknown as (ask: object) => Promise<unknown>;
    router[route.method](route.path, (request: Request, response: Admitted) =>
      answer({ route, handle, request, response }, desk),
    );
  }
  return router;
}

interface Asked {
  readonly route: Route;
  readonly handle: (ask: object) => Promise<unknown>;
  readonly request: Request;
  readonly response: Admitted;
}

async function answer(
  { route, handle, request, response }: Asked,
  { store, now: clock, newId, paper }: Means,
): Promise<void> {
  const params = paramsOf(request);
  const query = route.query && read(route.query, request.query);
  const body = route.body && read(route.body, request.body);
  const writes = route.method !== 'get' && route.keeps !== false;
  const once = writes ? onceOf(request) : undefined;
  const work = (books: Books) => {
    const now = clock();
    const ask = { params, query, body, books, now, newId, paper };
    return answeredOnce(once, { books, now }, async () => {
      if (writes) await mustBeAsSeen(request, route, ask);
      return handle(ask);
    });
  };
  const { organisation } = response.locals;
  const { answer, text } = await (writes
    ? store.within(organisation, work)
    : store.reading(organisation, work));
  const tag = tagOf(route, answer);
  if (tag !== undefined) response.set('ETag', tag);
  response
    .status(route.status ?? 200)
    .type('json')
    .send(text);
}

const ids = z.record(z.string(), z.uuid());

/** Every parameter of a path is an id; what is none leads nowhere. */
export function paramsOf(request: Request): Readonly<Record<string, string>> {
  const read = ids.safeParse({ ...request.params });
  if (!read.success) throw new NotFound();
  return read.data;
}

function read(schema: z.ZodType, sent: unknown): unknown {
  const read = readBy(schema, sent);
  if ('misread' in read) throw new NotRead(read.misread);
  return read.value;
}
