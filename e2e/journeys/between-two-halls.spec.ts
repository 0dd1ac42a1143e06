// On a phone, standing up, with one thumb: a call is marked played in three taps at most, and every screen fits.

import type { Page } from '@playwright/test';
import { agreeRehearsal } from '../agreed.ts';
import { openExample } from '../example.ts';
import { expect, goTo, isTold, openBook, test } from '../pianist.ts';
import { screens } from '../screens.ts';

/** Smaller than a thumb needs is too small: WCAG 2.2, success criterion 2.5.8, in CSS pixels. */
const LEAST = 24;

test('a rehearsal is marked played in two taps from its engagement', async ({ page, server }) => {
  await openBook(page, server);
  const title = await agreeRehearsal(page);
  await goTo(page, 'Engagements');
  await page.getByRole('link', { name: title }).tap();
  await page.getByRole('button', { name: /^Played: Rehearsal/ }).tap();
  await page.getByRole('button', { name: 'It was played so' }).tap();
  await isTold(page, /^Rehearsal, .* is played\.$/);
  await expect(page.getByRole('region', { name: 'Statement' }).getByText('€45.00')).toBeVisible();
});

test('one that ran over is marked played in three taps', async ({ page, server }) => {
  await openBook(page, server);
  const title = await agreeRehearsal(page);
  await goTo(page, 'Engagements');
  await page.getByRole('link', { name: title }).tap();
  await page.getByRole('button', { name: /^Played: Rehearsal/ }).tap();
  await page.getByRole('button', { name: '15 minutes later' }).tap();
  await page.getByRole('button', { name: 'It was played so' }).tap();
  await isTold(page, /^Rehearsal, .* is played\.$/);
  // An hour and a quarter at 45.00.
  await expect(page.getByRole('region', { name: 'Statement' }).getByText('€56.25')).toBeVisible();
});

test('a call is touched once to read it in the score, and twice to follow it', async ({ page, server }) => {
  await openBook(page, server);
  const title = await agreeRehearsal(page);
  await goTo(page, 'Season');
  await page.reload();
  const call = page.getByRole('group', { name: /^Solveig Arendt: / }).getByRole('link');
  await call.tap();
  await expect(page.getByText(/Small hall · Between two halls · agreed$/)).toBeInViewport();
  await call.tap();
  await expect(page.getByRole('heading', { level: 1, name: title })).toBeVisible();
});

test('no screen moves sideways, and no target is too small for a thumb', async ({ page, server }) => {
  await openExample(page, server);
  for (const [screen, open] of Object.entries(screens)) {
    await test.step(screen, async () => {
      await open(page);
      expect.soft(await tooSmall(page), `small targets on ${screen}`).toEqual([]);
      for (const colorScheme of ['dark', 'light'] as const) {
        await page.emulateMedia({ colorScheme });
        await fits(page, screen);
      }
      await page.goto('/');
    });
  }
});

/** On a phone of today, and on the narrowest. */
async function fits(page: Page, screen: string): Promise<void> {
  for (const width of [320, 390]) {
    await page.setViewportSize({ width, height: 844 });
    expect.soft(await widthOf(page), `${screen} at ${width}`).toBe(width);
  }
}

/** How wide the page is; a phone would show a wider one smaller. */
function widthOf(page: Page): Promise<number> {
  return page.evaluate(() => document.documentElement.scrollWidth);
}

/**
 * What can be tapped and is too small, save links within a sentence, which the criterion excepts. A tick is tapped
 * by its label too.
 */
function tooSmall(page: Page): Promise<string[]> {
  return page.evaluate((least) => {
    const targets = document.querySelectorAll('button, summary, select, input, textarea, nav a, header a');
    const isSmall = (target: Element) => {
      const { width, height } = (target.closest('label') ?? target).getBoundingClientRect();
      return target.checkVisibility() && Math.min(width, height) < least;
    };
    return [...targets].filter(isSmall).map((target) => target.outerHTML.slice(0, 120));
  }, LEAST);
}
