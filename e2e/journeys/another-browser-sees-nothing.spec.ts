// The books are for the browser that was let in: no other sees them, the key turns once, and a restart changes neither.

import type { Browser, Page } from '@playwright/test';
import { openExample } from '../example.ts';
import { expect, openBook, test } from '../pianist.ts';

test('another browser without the key sees nothing of the books', async ({ page, server, browser }) => {
  await openExample(page, server);
  const other = await anotherBrowser(browser);
  await other.goto(server.address);
  await seesNothing(other, 'These books are closed to this browser.');
  for (const path of ['/api/organisation', '/api/engagements', '/api/invoices', '/api/parties']) {
    const answer = await other.request.get(`${server.address}${path}`);
    expect([path, answer.status()]).toEqual([path, 401]);
    expect(answer.headers()['content-type']).toContain('application/problem+json');
  }
  await other.context().close();
});

test('the key lets one browser in, once', async ({ page, server, browser }) => {
  await openBook(page, server);
  await expect(page).not.toHaveURL(/key=/);
  const other = await anotherBrowser(browser);
  await other.goto(server.invitation);
  await seesNothing(other, 'This key was used before');
  await other.context().close();
  await page.reload();
  await expect(page.getByRole('heading', { name: 'An empty book' })).toBeVisible();
});

test('after a restart the browser that was let in goes on where it was', async ({ page, server }) => {
  await openExample(page, server);
  const title = await page.getByRole('heading', { level: 1 }).textContent();
  const staves = await page.getByRole('region', { name: 'Score of the season' }).getByRole('group').count();
  await server.restart();
  await page.reload();
  await expect(page.getByRole('heading', { level: 1, name: title ?? '' })).toBeVisible();
  const again = page.getByRole('region', { name: 'Score of the season' }).getByRole('group');
  await expect(again).toHaveCount(staves);
});

test('the key printed after a restart lets a second browser in, and the first stays in', async ({
  page,
  server,
  browser,
}) => {
  await openBook(page, server);
  const invitation = await server.restart();
  const other = await anotherBrowser(browser);
  await other.goto(invitation);
  await expect(other.getByRole('heading', { name: 'An empty book' })).toBeVisible();
  await other.context().close();
  await page.reload();
  await expect(page.getByRole('heading', { name: 'An empty book' })).toBeVisible();
});

async function anotherBrowser(browser: Browser): Promise<Page> {
  return (await browser.newContext()).newPage();
}

/** One sentence that says how to come in, and nothing of the books. */
async function seesNothing(page: Page, sentence: string): Promise<void> {
  await expect(page.getByText(sentence)).toBeVisible();
  await expect(page.getByRole('navigation')).toHaveCount(0);
  await expect(page.getByText('Ilka Torvane')).toHaveCount(0);
}
