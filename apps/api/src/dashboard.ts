// Serves the built dashboard: its files by their names, and its page for every address within it.

import { existsSync } from 'node:fs';
import { basename, dirname, extname, join } from 'node:path';
import express, { type Request, type RequestHandler, Router } from 'express';
import { noSession } from './refusals.ts';
import { organisationOf, turnAway } from './session.ts';
import type { Whose } from './whose.ts';

const PAGE_ONLY_FROM_HERE = [
  "default-src 'self'",
  "base-uri 'none'",
  "object-src 'none'",
  "form-action 'self'",
  "frame-ancestors 'none'",
].join('; ');

export function serveDashboard(folder: string, whose: Whose): Router {
  const router = Router();
  router.use(express.static(folder, { index: false, redirect: false, setHeaders: keepLong }));
  router.use(page(folder, whose));
  return router;
}

/** A built file under assets/ has the hash of its content in its name, and so never changes. */
function keepLong(response: express.Response, path: string): void {
  const hashed = basename(dirname(path)) === 'assets';
  response.set('Cache-Control', hashed ? 'public, max-age=31536000, immutable' : 'no-cache');
}

function page(folder: string, whose: Whose): RequestHandler {
  return async (request, response, next) => {
    if (!isPage(request)) return next();
    if (!(await maySee(request, whose))) return turnAway(response, noSession.sentence);
    if (!existsSync(join(folder, 'index.html'))) return turnAway(response, NOT_BUILT);
    response.set({ 'Cache-Control': 'no-cache', 'Content-Security-Policy': PAGE_ONLY_FROM_HERE });
    response.sendFile('index.html', { root: folder });
  };
}

const NOT_BUILT = 'The pages are not built yet. Start the program by npm start, which builds them first.';

function isPage({ method, path }: Request): boolean {
  return (method === 'GET' || method === 'HEAD') && extname(path) === '' && !path.startsWith('/assets/');
}

/**
 * A browser keeps a strict cookie to itself when a link on another site leads here. The page then comes without a
 * word of the books in it, and asks for them itself.
 */
async function maySee(request: Request, whose: Whose): Promise<boolean> {
  const fromElsewhere = request.get('sec-fetch-site') === 'cross-site';
  return fromElsewhere || (await organisationOf(request, whose)) !== undefined;
}
