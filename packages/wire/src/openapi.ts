// The OpenAPI 3.1 document, read off the table of routes: what the server checks by is what it publishes.

import { currency } from '@colla/money';
import { KINDS, menu, writtenTariffSchema } from '@colla/rates';
import { granted } from '@colla/refusal';
import { z } from 'zod';
import { agreement, call, engagement, engagementSummary, engagementWhole, work } from './engagements.ts';
import { invoice, payment } from './invoices.ts';
import { accountStatement, ageing, journal, trialBalance } from './money.ts';
import { organisation, party } from './organisations.ts';
import { problem } from './problem.ts';
import { type Route, type RouteName, routes } from './routes.ts';
import { season, seasonScore } from './seasons.ts';
import { statement, statementLine } from './statements.ts';
import { tariff, tariffVersion, tariffWhole } from './tariffs.ts';

type Json = Record<string, unknown>;
type Names = ReturnType<typeof z.registry<{ id: string }>>;

/** Schemas of what is answered that have a name of their own in the document. */
const NAMED = {
  AccountStatement: accountStatement,
  Ageing: ageing,
  Agreement: agreement,
  Call: call,
  Engagement: engagement,
  EngagementSummary: engagementSummary,
  EngagementWhole: engagementWhole,
  Invoice: invoice,
  Journal: journal,
  Organisation: organisation,
  Party: party,
  Payment: payment,
  Problem: problem,
  Season: season,
  SeasonScore: seasonScore,
  Statement: statement,
  StatementLine: statementLine,
  Tariff: tariff,
  TariffVersion: tariffVersion,
  TariffWhole: tariffWhole,
  TrialBalance: trialBalance,
  Work: work,
} as const satisfies Record<string, z.ZodType>;

/** The document. `cookie` is the name of the cookie that carries the session. */
export function openApi({ cookie }: { cookie: string }): Json {
  const answers: Names = z.registry();
  const bodies: Names = z.registry();
  for (const [id, schema] of Object.entries(NAMED)) answers.add(schema, { id });
  const paths = pathsOf(answers, bodies);
  return {
    openapi: '3.1.0',
    info: {
      title: 'Colla Parte',
      version: '0.1.0',
      description:
        'Engagements of a collaborative pianist from inquiry to paid. Amounts are decimal text in the currency named beside them; ' +
        'instants carry their zone (RFC 9557); every “no” is a problem (RFC 9457) whose detail says how to mend it.',
    },
    servers: [{ url: '/api' }],
    security: [{ session: [] }],
    paths,
    components: {
      schemas: {
        ...schemasOf(answers, 'output'),
        ...schemasOf(bodies, 'input'),
        [TERMS]: { anyOf: termsOfAllKinds() },
      },
      responses: { Problem: answerIn('application/problem+json', 'Why not, and how to mend it', 'Problem') },
      securitySchemes: { session: { type: 'apiKey', in: 'cookie', name: cookie } },
    },
  };
}

function pathsOf(answers: Names, bodies: Names): Json {
  const paths: Record<string, Json> = {
    '/invoices/{id}/pdf': { get: pdf },
    '/openapi.json': { get: self },
    '/tariff-schema.json': { get: tariffSchema },
    '/problems/{noun}/{what}': { get: problemKind },
  };
  for (const [name, route] of Object.entries(routes) as [RouteName, Route][]) {
    const path = route.path.replace(/:(\w+)/g, '{$1}');
    paths[path] = { ...paths[path], [route.method]: operationOf(name, route, { answers, bodies }) };
  }
  return paths;
}

function operationOf(
  name: RouteName,
  route: Route,
  { answers, bodies }: Record<'answers' | 'bodies', Names>,
): Json {
  const parameters = [
    ...pathParameters(route.path),
    ...queryParameters(route.query),
    ...(route.method === 'get' || route.keeps === false ? [] : [onceOnly]),
    ...(isEdit(route) ? [asSeen] : []),
  ];
  return {
    operationId: name,
    summary: route.summary,
    tags: [route.tag],
    ...(parameters.length > 0 ? { parameters } : {}),
    ...(route.body ? { requestBody: bodyIn(nameIn(bodies, route.body, `${capital(name)}Body`)) } : {}),
    responses: {
      [String(route.status ?? 200)]: answerIn(
        'application/json',
        route.summary,
        nameIn(answers, route.answer, `${capital(name)}Answer`),
      ),
      default: problemRef,
    },
  };
}

/** The name a schema has in the document; its own, or the one its route gives it. */
function nameIn(names: Names, schema: z.ZodType, otherwise: string): string {
  const known = names.get(schema)?.id;
  if (known) return known;
  names.add(schema, { id: otherwise });
  return otherwise;
}

function pathParameters(path: string): Json[] {
  return [...path.matchAll(/:(\w+)/g)].map(([, name]) => parameter(name ?? '', 'path', true, uuid));
}

function queryParameters(query: z.ZodType | undefined): Json[] {
  if (!query) return [];
  const { properties = {} } = z.toJSONSchema(query, { io: 'input' });
  return Object.entries(properties).map(([name, schema]) => parameter(name, 'query', false, schema as Json));
}

/** draft-ietf-httpapi-idempotency-key-header-07. */
const onceOnly: Json = {
  ...parameter('Idempotency-Key', 'header', false, { type: 'string', pattern: '^"[!#-\\[\\]-~]{1,200}"$' }),
  description: 'The same request under the same key is answered again and done once, for 7 days',
};

/** RFC 9110. Answers that show a noun which is edited carry its tag. */
const asSeen: Json = {
  ...parameter('If-Match', 'header', false, { type: 'string' }),
  description: 'The ETag of what the edit was made from; refused where that has changed since, with what did',
};

/** Whether a route changes a noun that is there already. */
function isEdit({ method, path, keeps }: Route): boolean {
  return (
    method !== 'get' && keeps !== false && /^\/(organisation$|(engagements|parties|tariffs)\/:id)/.test(path)
  );
}

const uuid = { type: 'string', format: 'uuid' };
const problemRef = { $ref: '#/components/responses/Problem' };

function parameter(name: string, place: 'path' | 'query' | 'header', required: boolean, schema: Json): Json {
  return { name, in: place, required, schema };
}

function bodyIn(name: string): Json {
  return { required: true, content: { 'application/json': { schema: ref(name) } } };
}

function answerIn(type: string, description: string, name: string): Json {
  return { description, content: { [type]: { schema: ref(name) } } };
}

function ref(name: string): Json {
  return { $ref: `#/components/schemas/${name}` };
}

/** The name of what the terms of a clause may be. */
const TERMS = 'ClauseTerms';

/** The schemas of a registry as components. */
function schemasOf(names: Names, io: 'input' | 'output'): Json {
  const { schemas } = z.toJSONSchema(names, {
    io,
    uri: (id) => `#/components/schemas/${id}`,
    override: ({ zodSchema, jsonSchema }) => {
      if (zodSchema !== writtenTariffSchema.shape.clauses.element.shape.terms) return;
      for (const word of Object.keys(jsonSchema)) delete jsonSchema[word];
      Object.assign(jsonSchema, ref(TERMS));
    },
  });
  return Object.fromEntries(
    Object.entries(schemas).map(([id, { $schema: _, $id: __, ...schema }]) => [id, schema]),
  );
}

/** The terms of every kind of clause. Amounts are text, so that they look alike in every currency. */
function termsOfAllKinds(): Json[] {
  const euro = granted(currency('EUR'));
  return KINDS.map((kind) => {
    const schema: z.ZodType = menu[kind].schema(euro);
    const { $schema: _, ...terms } = z.toJSONSchema(schema, { io: 'input' });
    return { title: menu[kind].title, description: menu[kind].help, ...terms };
  });
}

function capital(name: string): string {
  return name.charAt(0).toUpperCase() + name.slice(1);
}

const pdf: Json = {
  operationId: 'getInvoicePdf',
  summary: 'The invoice as a PDF document',
  tags: ['invoices'],
  parameters: [parameter('id', 'path', true, uuid)],
  responses: {
    '200': {
      description: 'The document, named by its number',
      content: { 'application/pdf': {} },
    },
    default: problemRef,
  },
};

const self: Json = {
  operationId: 'getOpenApi',
  summary: 'This document',
  tags: ['organisations'],
  security: [],
  responses: {
    '200': { description: 'OpenAPI 3.1', content: { 'application/json': { schema: { type: 'object' } } } },
  },
};

const tariffSchema: Json = {
  operationId: 'getTariffSchema',
  summary: 'The JSON Schema of a tariff as a file',
  tags: ['tariffs'],
  security: [],
  responses: {
    '200': {
      description: 'JSON Schema, draft 2020-12',
      content: { 'application/schema+json': { schema: { type: 'object' } } },
    },
  },
};

const word = { type: 'string' };

const problemKind: Json = {
  operationId: 'getProblemKind',
  summary: 'What a problem of this type is, and its status',
  tags: ['problems'],
  security: [],
  parameters: [parameter('noun', 'path', true, word), parameter('what', 'path', true, word)],
  responses: {
    '200': {
      description: 'Type, title and status',
      content: { 'application/json': { schema: { type: 'object' } } },
    },
    default: problemRef,
  },
};
