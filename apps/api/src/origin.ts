// Refuses what other sites make a browser ask: under another host name (DNS rebinding), or a change that starts from
// another origin. A browser says where a change starts; a program that says nothing is no page of another site.

import type { Request, RequestHandler } from 'express';
import { otherHost, otherOrigin, refuse } from './refusals.ts';

export const meantForUs: RequestHandler = (request, _response, next) => {
  const { host = '' } = request.headers;
  if (!ourNames(request.socket.localPort).includes(host)) refuse(otherHost);
  if (!['GET', 'HEAD'].includes(request.method) && startsElsewhere(request, host)) refuse(otherOrigin);
  next();
};

/** A browser leaves the port out of the name where it is HTTP's own. */
function ourNames(port: number | undefined): string[] {
  const names = ['127.0.0.1', 'localhost', '[::1]'];
  const withPort = names.map((name) => `${name}:${port}`);
  return port === 80 ? [...names, ...withPort] : withPort;
}

function startsElsewhere(request: Request, host: string): boolean {
  const site = request.get('sec-fetch-site') ?? 'same-origin';
  const origin = request.get('origin') ?? `http://${host}`;
  return site !== 'same-origin' || origin !== `http://${host}`;
}
