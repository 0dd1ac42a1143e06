// Who may see the books: whoever opened the printed address first. Its one-time key is exchanged for a session, kept
// by the hash of its token, so that neither the books nor a copy of them can open a session.

import { createHash, timingSafeEqual } from 'node:crypto';
import type { Temporal } from '@colla/calendar';
import type { Store } from '@colla/store';
import type { Request, RequestHandler, Response } from 'express';
import { noSession, refuse } from './refusals.ts';
import type { Whose } from './whose.ts';

/** How long a browser stays let in. */
const SESSION_HOURS = 30 * 24;

export interface Invitation {
  /** The key of the printed address. */
  readonly key: string;
  readonly organisation: string;
}

export interface Gate {
  readonly store: Store;
  readonly now: () => Temporal.Instant;
  readonly newKey: () => string;
  readonly invitation: Invitation;
}

/** Exchanges the key of the printed address for a session, once. */
export function exchangeKey({ store, now, newKey, invitation }: Gate): RequestHandler {
  const admits = oneTimeKey(invitation.key);
  return async (request, response, next) => {
    const { key } = request.query;
    if (key === undefined || request.method !== 'GET') return next();
    if (typeof key !== 'string' || !admits(key)) return turnAway(response, USED_KEY);
    const token = newKey();
    const until = now().add({ hours: SESSION_HOURS });
    await store.addSession({ organisation: invitation.organisation, tokenHash: hashOf(token), until });
    response.cookie(cookieName(request), token, {
      httpOnly: true,
      sameSite: 'strict',
      maxAge: SESSION_HOURS * 3_600_000,
    });
    response.redirect(303, '/');
  };
}

const USED_KEY =
  'This key was used before or is not the one that was printed. Open the books in the browser that used it, or start the program again for a new address.';

function oneTimeKey(key: string): (offered: string) => boolean {
  let left: string | undefined = key;
  return (offered) => {
    if (left === undefined || !same(left, offered)) return false;
    left = undefined;
    return true;
  };
}

/** Compares in a time that tells nothing of how much is right. */
function same(one: string, other: string): boolean {
  return timingSafeEqual(Buffer.from(hashOf(one)), Buffer.from(hashOf(other)));
}

/** One sentence, and no page. */
export function turnAway(response: Response, sentence: string): void {
  response.status(403).type('text/plain').send(`${sentence}\n`);
}

/** Lets a request with a session through, and says whose books it opens; refuses any other. */
export function admit(whose: Whose): RequestHandler {
  return async (request, response, next) => {
    const organisation = await organisationOf(request, whose);
    if (organisation === undefined) return refuse(noSession);
    response.locals.organisation = organisation;
    next();
  };
}

/** The organisation whose session a request carries. */
export async function organisationOf(request: Request, whose: Whose): Promise<string | undefined> {
  const token = cookieOf(request);
  return token === undefined ? undefined : await whose(hashOf(token));
}

/** Cookies know no port: its number in the name keeps two programs on one machine apart. */
export function cookieName(request: Request): string {
  return `colla_${request.socket.localPort}`;
}

function cookieOf(request: Request): string | undefined {
  const name = `${cookieName(request)}=`;
  const cookies = request.headers.cookie?.split(';') ?? [];
  return cookies
    .map((cookie) => cookie.trim())
    .find((cookie) => cookie.startsWith(name))
    ?.slice(name.length);
}

function hashOf(secret: string): string {
  return createHash('sha256').update(secret).digest('hex');
}
