// A writing request that carries an Idempotency-Key happens once: asked again, it is answered as before
// (draft-ietf-httpapi-idempotency-key-header-07).

import { createHash } from 'node:crypto';
import type { Temporal } from '@colla/calendar';
import type { Books } from '@colla/store';
import type { Request } from 'express';
import { badKey, refuse } from './refusals.ts';

/** The key of a request, and a hash of what it asks. */
export interface Once {
  readonly key: string;
  readonly asked: string;
}

/** What a request says of being asked again; undefined where it carries no key. Refuses a key that is none. */
export function onceOf(request: Request): Once | undefined {
  const header = request.get('idempotency-key');
  if (header === undefined) return undefined;
  const key = /^"([\x21\x23-\x5b\x5d-\x7e]{1,200})"$/.exec(header.trim())?.[1] ?? refuse(badKey);
  const asked = createHash('sha256');
  for (const part of [request.method, request.originalUrl, JSON.stringify(request.body)]) {
    asked.update(`${part}\n`);
  }
  return { key, asked: asked.digest('hex') };
}

/** An answer, and the text of it that is sent. */
export interface Answered {
  readonly answer: unknown;
  readonly text: string;
}

/** The answer, or the one of before where there is one. Answer and key are kept with what the request did. */
export async function answeredOnce(
  once: Once | undefined,
  { books, now }: { readonly books: Books; readonly now: Temporal.Instant },
  answer: () => Promise<unknown>,
): Promise<Answered> {
  const before = once && (await books.answered(once));
  if (before !== undefined) return { answer: JSON.parse(before), text: before };
  const given = await answer();
  const text = JSON.stringify(given);
  if (once) await books.keepAnswer({ ...once, answer: text, keptAt: now });
  return { answer: given, text };
}
