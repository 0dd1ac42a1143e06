// Reads the body of a request: JSON, at most 1 MB, and a word on where it goes wrong.

import { type Request, type RequestHandler, raw } from 'express';
import { malformed, notJson, refuse } from './refusals.ts';

const readBytes = raw({ type: 'application/json', limit: '1mb' });

export const readBody: RequestHandler[] = [
  readBytes,
  (request, _response, next) => {
    request.body = parsed(request);
    next();
  },
];

function parsed(request: Request): unknown {
  if (Buffer.isBuffer(request.body)) return parse(request.body.toString('utf8'));
  return hasBody(request) ? refuse(notJson) : undefined;
}

function hasBody({ headers }: Request): boolean {
  return headers['transfer-encoding'] !== undefined || Number(headers['content-length'] ?? 0) > 0;
}

function parse(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    return refuse(malformed(positionOf(error, text)));
  }
}

/**
 * Where JSON goes wrong, counted from one. The runtime says the position of most mistakes; of a character that
 * cannot stand where it does it says none, and the shortest beginning with this mistake ends there.
 */
function positionOf(error: unknown, text: string): number {
  const said = /at position (\d+)/.exec(String(error))?.[1];
  if (said !== undefined) return Number(said) + 1;
  let [fine, wrong] = [0, text.length];
  while (wrong - fine > 1) {
    const middle = (fine + wrong) >> 1;
    if (hasMisplaced(text.slice(0, middle))) wrong = middle;
    else fine = middle;
  }
  return wrong;
}

function hasMisplaced(beginning: string): boolean {
  try {
    JSON.parse(beginning);
    return false;
  } catch (error) {
    return String(error).endsWith('is not valid JSON');
  }
}
