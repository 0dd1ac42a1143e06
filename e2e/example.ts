// The invented season of an invented pianist, opened by the one click that offers it.

import type { Page } from '@playwright/test';
import { expect, openBook } from './pianist.ts';
import type { Server } from './server.ts';

export async function openExample(page: Page, server: Server): Promise<void> {
  await openBook(page, server);
  await page.getByRole('button', { name: 'Open a worked example season' }).click();
  await expect(page.getByRole('region', { name: 'Score of the season' })).toBeVisible();
}

/** Opens one of its engagements, from their list. */
export async function openEngagement(page: Page, title: string): Promise<void> {
  await page.getByRole('navigation').getByRole('link', { name: 'Engagements' }).click();
  await page.getByRole('link', { name: title, exact: true }).click();
  await expect(page.getByRole('heading', { level: 1, name: title })).toBeVisible();
}
