import { KINDS } from '@colla/rates';
import { Validator } from '@seriousme/openapi-schema-validator';
import { expect, test } from 'vitest';
import { openApi } from './openapi.ts';
import { routes } from './routes.ts';

const document = openApi({ cookie: 'session' });
const text = JSON.stringify(document);

test('the published document is OpenAPI 3.1 to an independent validator', async () => {
  const validator = new Validator();
  expect(await validator.validate(JSON.parse(text))).toEqual({ valid: true });
  expect(validator.version).toBe('3.1');
});

test('every route of the table is published under its name', () => {
  const published = [...text.matchAll(/"operationId":"(\w+)"/g)].map(([, name]) => name);
  expect(published.sort()).toEqual(
    [...Object.keys(routes), 'getInvoicePdf', 'getOpenApi', 'getProblemKind', 'getTariffSchema'].sort(),
  );
});

test('every reference within the document leads somewhere', () => {
  const { schemas, responses } = document.components as Record<'schemas' | 'responses', object>;
  const known = [
    ...Object.keys(schemas).map((name) => `#/components/schemas/${name}`),
    ...Object.keys(responses).map((name) => `#/components/responses/${name}`),
  ];
  const named = [...text.matchAll(/"\$ref":"([^"]+)"/g)].map(([, reference]) => reference);
  expect(named.filter((reference) => !known.includes(reference ?? ''))).toEqual([]);
});

test('a clause is published with the terms of every kind', () => {
  const { ClauseTerms } = (document.components as { schemas: { ClauseTerms: { anyOf: object[] } } }).schemas;
  expect(ClauseTerms.anyOf).toHaveLength(KINDS.length);
  expect(text).toContain('"terms":{"$ref":"#/components/schemas/ClauseTerms"}');
});
