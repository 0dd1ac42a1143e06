// The pianist at the browser: opens the book with the key it was given, and is disturbed by no error.

import type { Page } from '@playwright/test';
import { expect, test as onServer, type Server } from './server.ts';

export { expect } from './server.ts';

/** Chromium's own remark on every answer of 400 and more: what such an answer says is tested on the page. */
const REMARK = /^Failed to load resource: the server responded with a status of 4\d\d/;

export const test = onServer.extend({
  baseURL: ({ server }, use) => use(server.address),
  page: async ({ page }, use) => {
    const errors: string[] = [];
    page.on('pageerror', (error) => errors.push(error.message));
    page.on('console', (said) => {
      if (said.type() === 'error' && !REMARK.test(said.text())) errors.push(said.text());
    });
    await use(page);
    expect(errors, 'errors in the console of the browser').toEqual([]);
  },
});

/** The first visit: the printed address, which lets this browser in. */
export async function openBook(page: Page, { invitation }: Server): Promise<void> {
  await page.goto(invitation);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
}

/** Goes to a part of the books by its link above every page. */
export async function goTo(
  page: Page,
  part: 'Season' | 'Engagements' | 'Invoices' | 'Tariffs' | 'Practice',
): Promise<void> {
  await page.getByRole('navigation').getByRole('link', { name: part }).click();
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
}

/** What the line at the foot of the page says has just been done. */
export async function isTold(page: Page, sentence: string | RegExp): Promise<void> {
  await expect(page.getByRole('status').filter({ hasText: sentence })).toBeVisible();
}
