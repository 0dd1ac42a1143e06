import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { databases, openPractice, type Practice } from '../trial/practice.ts';

const [embedded] = databases;
let practice: Practice;
let folder: string;

beforeAll(async () => {
  if (!embedded) throw new Error('there is no database to test on');
  folder = await mkdtemp(join(tmpdir(), 'colla-pages-'));
  await mkdir(join(folder, 'dist', 'assets'), { recursive: true });
  await writeFile(join(folder, 'secret.txt'), 'secret');
  await writeFile(join(folder, 'dist', 'index.html'), '<!doctype html><title>Season</title>');
  await writeFile(join(folder, 'dist', 'assets', 'season-1a2b3c.js'), 'export {};');
  practice = await openPractice(embedded[1], { dashboard: join(folder, 'dist') });
});
afterAll(async () => {
  await practice.close();
  await rm(folder, { recursive: true });
});

test('every address of the dashboard answers its page, fresh each time and open to no other site', async () => {
  for (const path of ['/', '/engagements', '/engagements/018f0000-0000-7000-8000-000000000000']) {
    const response = await practice.browser.fetch(path);
    expect(response.status).toBe(200);
    expect(await response.text()).toContain('<title>Season</title>');
    expect(response.headers.get('cache-control')).toBe('no-cache');
    expect(response.headers.get('x-content-type-options')).toBe('nosniff');
    expect(response.headers.get('content-security-policy')).toBe(
      "default-src 'self'; base-uri 'none'; object-src 'none'; form-action 'self'; frame-ancestors 'none'",
    );
  }
});

test('a file named by its content is kept by the browser for good', async () => {
  const response = await practice.browser.fetch('/assets/season-1a2b3c.js');
  expect(response.status).toBe(200);
  expect(response.headers.get('cache-control')).toBe('public, max-age=31536000, immutable');
});

test('a file that is not there is not answered by a page', async () => {
  for (const path of ['/assets/season-9z9z9z.js', '/favicon.ico']) {
    expect((await practice.browser.fetch(path)).status).toBe(404);
  }
});

test.each(['/../secret.txt', '/assets/../../secret.txt', '/..%2fsecret.txt', '/assets/..%2f..%2fsecret.txt'])(
  'no path leads out of the folder of the dashboard: %s',
  async (path) => {
    expect(await textAt(path)).not.toContain('secret');
  },
);

test('a link on another site opens the page, which then asks for the books itself', async () => {
  const response = await practice.stranger.fetch('/', { headers: { 'sec-fetch-site': 'cross-site' } });
  expect(response.status).toBe(200);
  expect(await response.text()).toContain('<title>Season</title>');
});

/** What is answered at a path that fetch would tidy up before asking. */
function textAt(path: string): Promise<string> {
  const { hostname, port } = new URL(practice.address);
  return new Promise((resolve, reject) => {
    const asking = request({ hostname, port, path }, (response) => {
      let text = '';
      response.on('data', (chunk) => {
        text += chunk;
      });
      response.on('end', () => resolve(text));
    });
    asking.on('error', reject).end();
  });
}
