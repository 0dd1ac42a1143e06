import { request } from 'node:http';
import { paths } from '@colla/wire/client';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { cookieFor, databases, openPractice, type Practice } from '../trial/practice.ts';

describe.each(databases)('the door of the books, %s', (_, begin) => {
  let practice: Practice;
  let cookie: string;
  beforeAll(async () => {
    practice = await openPractice(begin, { enter: false });
    const response = await practice.stranger.fetch(`/?key=${practice.key}`);
    expect(response.status).toBe(303);
    expect(response.headers.get('location')).toBe('/');
    const given = response.headers.get('set-cookie') ?? '';
    expect(given).toMatch(/; HttpOnly/);
    expect(given).toMatch(/; SameSite=Strict/);
    expect(given).toMatch(/; Max-Age=2592000/);
    cookie = given.split(';')[0] ?? '';
  });
  afterAll(() => practice.close());

  test('the printed key lets one browser in', async () => {
    const response = await practice.stranger.fetch('/api/organisation', { headers: { cookie } });
    expect(await response.json()).toMatchObject({
      name: 'My practice',
      currency: 'EUR',
      zone: 'Europe/London',
    });
  });

  test('a key used twice, or a wrong one, gets one sentence and no page', async () => {
    for (const key of [practice.key, 'guessed', '']) {
      const response = await practice.stranger.fetch(`/?key=${key}`);
      expect(response.status).toBe(403);
      expect(response.headers.get('content-type')).toContain('text/plain');
      expect(response.headers.get('set-cookie')).toBeNull();
      expect(await response.text()).toBe(
        'This key was used before or is not the one that was printed. Open the books in the browser that used it, or start the program again for a new address.\n',
      );
    }
  });

  test('a second browser without a session is told nothing by any route', async () => {
    for (const { method, path } of Object.values(paths)) {
      const address = path.replace(/:\w+/g, '018f0000-0000-7000-8000-000000000000');
      const response = await practice.stranger.fetch(`/api${address}`, { method: method.toUpperCase() });
      expect(response.status).toBe(401);
      expect(response.headers.get('content-type')).toContain('application/problem+json');
      expect(await response.json()).toMatchObject({ type: '/api/problems/sessions/none' });
    }
  });

  test('a second browser sees no document and no page', async () => {
    const pdf = await practice.stranger.fetch('/api/invoices/018f0000-0000-7000-8000-000000000000/pdf');
    expect(pdf.status).toBe(401);
    const page = await practice.stranger.fetch('/engagements');
    expect(page.status).toBe(403);
    expect(await page.text()).toMatch(/^These books are closed to this browser\./);
  });

  test('a made-up session is none', async () => {
    const name = cookie.split('=')[0];
    const made = `${name}=0123456789`;
    const response = await practice.stranger.fetch('/api/organisation', { headers: { cookie: made } });
    expect(response.status).toBe(401);
  });

  test('a session ends after thirty days', async () => {
    practice.setClock('2026-11-19T08:59:00Z');
    const before = await practice.stranger.fetch('/api/organisation', { headers: { cookie } });
    expect(before.status).toBe(200);
    practice.setClock('2026-11-19T09:00:01Z');
    const after = await practice.stranger.fetch('/api/organisation', { headers: { cookie } });
    expect(after.status).toBe(401);
    practice.setClock('2026-10-20T09:00:00Z');
  });

  test('a page of another site cannot change the books of a browser that is let in', async () => {
    const body = JSON.stringify({ name: 'Theirs' });
    const ask = (from: Record<string, string>) =>
      practice.stranger.fetch('/api/organisation', {
        method: 'PATCH',
        headers: { cookie, 'content-type': 'application/json', ...from },
        body,
      });
    for (const from of [
      { origin: 'http://elsewhere.example.org' },
      { origin: 'null' },
      { origin: `${practice.address}0` },
      { 'sec-fetch-site': 'cross-site' },
      { 'sec-fetch-site': 'same-site' },
    ] satisfies Record<string, string>[]) {
      const response = await ask(from);
      expect(response.status).toBe(403);
      expect(await response.json()).toMatchObject({ type: '/api/problems/sessions/other-origin' });
    }
    expect((await ask({ 'sec-fetch-site': 'same-origin' })).status).toBe(200);
  });

  test.each([['evil.example.org'], ['evil.example.org:80'], ['127.0.0.1:1'], ['127.0.0.1']])(
    'under the host name “%s” nothing is answered',
    async (host) => {
      expect(await statusUnder(host, practice.address)).toBe(421);
    },
  );

  test('under its own names it answers', async () => {
    const { port } = new URL(practice.address);
    for (const name of ['127.0.0.1', 'localhost', '[::1]']) {
      expect(await statusUnder(`${name}:${port}`, practice.address)).toBe(200);
    }
  });

  test('the description of the API is open to all', async () => {
    const response = await practice.stranger.fetch('/api/openapi.json');
    expect(response.status).toBe(200);
    const document = (await response.json()) as { openapi: string; components: { securitySchemes: unknown } };
    expect(document.openapi).toBe('3.1.0');
    expect(document.components.securitySchemes).toEqual({
      session: { type: 'apiKey', in: 'cookie', name: cookie.split('=')[0] },
    });
  });

  test('the address that a problem has for its type says what it is', async () => {
    const response = await practice.stranger.fetch('/api/problems/invoicing/more-than-owed');
    expect(await response.json()).toEqual({
      type: '/api/problems/invoicing/more-than-owed',
      title: 'More than is owed',
      status: 409,
    });
    expect((await practice.stranger.fetch('/api/problems/invoicing/constructor')).status).toBe(404);
  });

  test('a key that was asked for with HEAD is not used up', async () => {
    const other = await openPractice(begin, { enter: false });
    await fetch(`${other.address}/?key=${other.key}`, { method: 'HEAD' });
    expect(await cookieFor(other.address, other.key)).not.toBe('');
    await other.close();
  });
});

/** The status of a request whose Host header is `host`, which fetch would not let us choose. */
function statusUnder(host: string, address: string): Promise<number | undefined> {
  return new Promise((resolve, reject) => {
    const asking = request(`${address}/api/openapi.json`, { headers: { host } }, (response) => {
      response.resume();
      resolve(response.statusCode);
    });
    asking.on('error', reject).end();
  });
}
