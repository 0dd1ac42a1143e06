import { createServer, type RequestListener, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterEach, expect, test } from 'vitest';
import { createClient, invoicePdfAddress, isProblemOf, ProblemError } from './client.ts';

let server: Server | undefined;
afterEach(() => server?.close());

async function serve(answer: RequestListener): Promise<string> {
  server = createServer(answer).listen(0, '127.0.0.1');
  await new Promise((resolve) => server?.once('listening', resolve));
  return `http://127.0.0.1:${(server.address() as AddressInfo).port}/api`;
}

test('a question is sent to its route, with its parameters, query and body', async () => {
  const heard: unknown[] = [];
  const base = await serve(async (request, response) => {
    let body = '';
    for await (const part of request) body += part;
    heard.push([request.method, request.url, body]);
    response.setHeader('content-type', 'application/json').end('{"items":[]}');
  });
  const client = createClient({ fetch, base });
  await client.listParties({ query: { limit: 5, after: 'a b&c' } });
  await client.listParties();
  await client.changeParty({ params: { id: 'a/b' }, body: { name: 'Sanna Ilves' } });
  expect(heard).toEqual([
    ['GET', '/api/parties?limit=5&after=a%20b%26c', ''],
    ['GET', '/api/parties', ''],
    ['PATCH', '/api/parties/a%2Fb', '{"name":"Sanna Ilves"}'],
  ]);
});

test('a “no” is thrown with its problem', async () => {
  const problem = {
    type: '/api/problems/invoicing/more-than-owed',
    title: 'More than is owed',
    status: 409,
    detail: 'Only 5.00 is owed.',
  };
  const base = await serve((_, response) => response.writeHead(409).end(JSON.stringify(problem)));
  const error = await createClient({ fetch, base })
    .getOrganisation()
    .catch((reason: unknown) => reason);
  if (!(error instanceof ProblemError)) throw error;
  expect(error.problem).toEqual(problem);
  expect(error.message).toBe('Only 5.00 is owed.');
  expect(isProblemOf(error.problem, 'invoicing/more-than-owed')).toBe(true);
  expect(isProblemOf(error.problem, 'invoicing/no-payment')).toBe(false);
});

test('a program that does not answer is a problem too', async () => {
  const base = await serve((request) => request.socket.destroy());
  const asking = createClient({ fetch, base }).getOrganisation();
  await expect(asking).rejects.toMatchObject({ problem: { status: 0, title: 'No answer' } });
});

test('an answer that is no JSON is a problem too', async () => {
  const base = await serve((_, response) => response.writeHead(502).end('<h1>Bad gateway</h1>'));
  const asking = createClient({ fetch, base }).getOrganisation();
  await expect(asking).rejects.toMatchObject({ problem: { status: 502, title: 'Unreadable answer' } });
});

test('a question that is given up ends as given up', async () => {
  const base = await serve(() => undefined);
  const giving = new AbortController();
  const asking = createClient({ fetch, base }).getOrganisation({}, { signal: giving.signal });
  giving.abort();
  await expect(asking).rejects.toMatchObject({ name: 'AbortError' });
});

test('a PDF is found by the id of its invoice alone', () => {
  expect(invoicePdfAddress('018f')).toBe('/api/invoices/018f/pdf');
});

test('what is kept goes under a key: one for a double click, the same where no answer came, a new one afterwards', async () => {
  const keys: string[] = [];
  let broken = 1;
  const base = await serve((request, response) => {
    keys.push(String(request.headers['idempotency-key']));
    if (broken-- > 0) request.socket.destroy();
    else response.writeHead(201).end('{}');
  });
  const client = createClient({ fetch, base });
  const add = () => client.addParty({ body: { name: 'Sanna Ilves' } });
  await Promise.all([add(), add()]);
  await add();
  expect(keys).toHaveLength(3);
  expect(keys[0]).toMatch(/^"[0-9a-f]{32}"$/);
  expect(keys[1]).toBe(keys[0]);
  expect(keys[2]).not.toBe(keys[0]);
});

test('what never got an answer is asked again by hand under the key it had; what was refused under a new one', async () => {
  const keys: string[] = [];
  const answers = ['none', 'none', 'no', 'yes'];
  const base = await serve((request, response) => {
    const answer = answers[keys.push(String(request.headers['idempotency-key'])) - 1];
    if (answer === 'none') request.socket.destroy();
    else response.writeHead(answer === 'yes' ? 201 : 409).end('{}');
  });
  const client = createClient({ fetch, base });
  const add = () => client.addParty({ body: { name: 'Sanna Ilves' } }).catch(() => 'no');
  for (let click = 1; click <= 3; click += 1) await add();
  expect(keys).toHaveLength(4);
  expect(new Set(keys.slice(0, 3)).size).toBe(1);
  expect(keys[3]).not.toBe(keys[2]);
});

test('what only asks, and what is sent but not kept, goes without a key', async () => {
  const keys: unknown[] = [];
  const base = await serve((request, response) => {
    keys.push(request.headers['idempotency-key']);
    response.end('{}');
  });
  const client = createClient({ fetch, base });
  await client.getOrganisation();
  await client.previewStatement({ body: {} } as never);
  expect(keys).toEqual([undefined, undefined]);
});
