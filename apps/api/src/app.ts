// The whole server, without a port: guards, the API, the dashboard, and problems.

import type { Temporal } from '@colla/calendar';
import { tariffJsonSchema } from '@colla/rates';
import type { Store } from '@colla/store';
import { openApi } from '@colla/wire';
import express, { type Express, type RequestHandler, Router } from 'express';
import { answerAll } from './answer.ts';
import { readBody } from './body.ts';
import { serveDashboard } from './dashboard.ts';
import { handlers } from './handlers.ts';
import { meantForUs } from './origin.ts';
import type { Paper } from './paper.ts';
import { answerProblem, NotFound, showKind } from './problems.ts';
import { sendPdf } from './routes/pdf.ts';
import { admit, cookieName, exchangeKey, type Invitation } from './session.ts';
import { sessionsOf, type Whose } from './whose.ts';

/** What the server is given: its doors to the world, its clock, and its sources of ids and keys. */
export interface Doors {
  readonly store: Store;
  readonly paper: Paper;
  readonly now: () => Temporal.Instant;
  readonly newId: () => string;
  readonly newKey: () => string;
  readonly invitation: Invitation;
  /** The folder of the built dashboard. */
  readonly dashboard: string;
}

export function createApp(doors: Doors): Express {
  const app = express();
  const whose = sessionsOf(doors);
  app.disable('x-powered-by').disable('etag');
  app.use(safely, meantForUs);
  app.use('/api', api(doors, whose));
  app.get('/', exchangeKey(doors));
  app.use(serveDashboard(doors.dashboard, whose));
  app.use(nothingHere, answerProblem);
  return app;
}

function api(doors: Doors, whose: Whose): Router {
  const router = Router();
  router.use(unkept);
  router.get('/openapi.json', describe());
  router.get('/tariff-schema.json', describeTariff());
  router.get('/problems/:noun/:what', showKind);
  router.use(admit(whose), readBody);
  router.get('/invoices/:id/pdf', sendPdf(doors));
  router.use(answerAll(handlers, doors), nothingHere);
  return router;
}

/** The description is made when it is first asked for. */
function describe(): RequestHandler {
  let document: object | undefined;
  return (request, response) => {
    document ??= openApi({ cookie: cookieName(request) });
    response.json(document);
  };
}

/** The form of a tariff's file, likewise: it is there for whoever writes one. */
function describeTariff(): RequestHandler {
  let schema: object | undefined;
  return (_request, response) => {
    schema ??= tariffJsonSchema();
    response.type('application/schema+json').send(JSON.stringify(schema));
  };
}

const safely: RequestHandler = (_request, response, next) => {
  response.set({
    'X-Content-Type-Options': 'nosniff',
    'Referrer-Policy': 'same-origin',
    'Cross-Origin-Opener-Policy': 'same-origin',
    'Cross-Origin-Resource-Policy': 'same-origin',
  });
  next();
};

const unkept: RequestHandler = (_request, response, next) => {
  response.set('Cache-Control', 'no-store');
  next();
};

const nothingHere: RequestHandler = () => {
  throw new NotFound();
};
