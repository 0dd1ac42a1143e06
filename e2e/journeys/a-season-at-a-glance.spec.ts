// An empty book, one click, and a season to look at: by eye, by arrow keys, as tables. Takes the picture of the README.

import { existsSync } from 'node:fs';
import { copyFile, mkdir } from 'node:fs/promises';
import { dirname } from 'node:path';
import { fileURLToPath } from 'node:url';
import type { Locator, Page } from '@playwright/test';
import { openExample } from '../example.ts';
import { takePicture } from '../looking.ts';
import { expect, openBook, test } from '../pianist.ts';

const SHOWN_IN_README = fileURLToPath(new URL('../../docs/season.png', import.meta.url));

test('an empty book offers three things to do, and an example one click away', async ({ page, server }) => {
  await openBook(page, server);
  await expect(page.getByRole('heading', { name: 'An empty book' })).toBeVisible();
  const ways = page.getByRole('main').getByRole('listitem');
  await expect(ways).toHaveCount(3);
  await expect(ways.nth(0).getByRole('link', { name: 'Enter an inquiry' })).toBeVisible();
  await expect(ways.nth(1).getByRole('link', { name: 'Write a tariff' })).toBeVisible();
  await expect(ways.nth(2).getByRole('button', { name: 'Name a season' })).toBeVisible();
  await page.getByRole('button', { name: 'Open a worked example season' }).click();
  await expect(page.getByRole('status').filter({ hasText: 'Nothing in it is real.' })).toBeVisible();
  const staves = page.getByRole('region', { name: 'Score of the season' }).getByRole('group');
  await expect(staves.first()).toBeVisible();
});

test('the keys walk along a stave, and Enter opens the engagement of a call', async ({ page, server }) => {
  await openExample(page, server);
  const stave = page.getByRole('group', { name: /^Church of the Two Lights: \d+ calls/ });
  const call = stave.getByRole('link');
  await call.focus();
  await page.keyboard.press('Home');
  const first = await call.getAttribute('aria-label');
  await page.keyboard.press('ArrowRight');
  await expect(call).toBeFocused();
  await expect(call).not.toHaveAttribute('aria-label', first ?? '');
  await page.keyboard.press('ArrowLeft');
  await expect(call).toHaveAttribute('aria-label', first ?? '');
  await expect(call).toHaveAttribute('aria-label', / · Sunday services, autumn · played$/);
  await page.keyboard.press('ArrowDown');
  await expect(page.getByRole('group', { name: /^Freya Lindqvar: / }).getByRole('link')).toBeFocused();
  await page.keyboard.press('ArrowUp');
  await expect(call).toBeFocused();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: 'Sunday services, autumn' })).toBeVisible();
});

test('who cannot see the score reads the same calls in tables', async ({ page, server }) => {
  await openExample(page, server);
  const stave = page.getByRole('group', { name: /^Teodor Brânzan: / });
  const said = (await stave.getAttribute('aria-label')) ?? '';
  const count = Number(/\d+/.exec(said)?.[0]);
  await page.getByText(`Teodor Brânzan, ${count} calls`, { exact: true }).click();
  const rows = page.getByRole('table', { name: 'Teodor Brânzan' }).getByRole('row');
  // One row more than calls: the heads of the columns.
  await expect(rows).toHaveCount(count + 1);
  await expect(page.getByRole('table', { name: 'Hours of each week' })).toBeVisible();
  await expect(page.getByRole('table', { name: 'What is owed' })).toBeVisible();
});

test('only the rounds of a competition are in view when only they are asked for', async ({
  page,
  server,
}) => {
  await openExample(page, server);
  const staves = page.getByRole('region', { name: 'Score of the season' }).getByRole('group');
  const all = await staves.count();
  const kind = page.getByRole('combobox', { name: 'Kind of call' });
  // On a phone the choices are folded away.
  if (!(await kind.isVisible())) await page.getByText('Show only').click();
  await kind.selectOption('Competition round');
  await expect(staves).toHaveCount(1);
  await expect(staves).toHaveAccessibleName(/^Lanternsea Competition for Young Players: /);
  await kind.selectOption('All');
  await expect(staves).toHaveCount(all);
  await page.getByRole('button', { name: 'missed', exact: true }).click();
  await expect(page.getByRole('button', { name: 'missed', exact: true })).toHaveAttribute(
    'aria-pressed',
    'true',
  );
  expect(await staves.count()).toBeLessThan(all);
});

test('the season is a picture worth showing', async ({ page, server }, { project }) => {
  await openExample(page, server);
  await fitTo(page, page.getByRole('region', { name: 'Score of the season' }));
  for (const scheme of ['dark', 'light'] as const) {
    await page.emulateMedia({ colorScheme: scheme });
    const picture = await takePicture(page, 'the season at a glance', { project, scheme, part: 'in sight' });
    if (project.name === 'desk' && scheme === 'light') await showInReadme(picture);
  }
});

/** Makes the window as high as it must be to show the page down to the end of an element. */
async function fitTo(page: Page, element: Locator): Promise<void> {
  const box = await element.boundingBox();
  const window = page.viewportSize();
  if (box && window) await page.setViewportSize({ ...window, height: Math.ceil(box.y + box.height) + 24 });
}

/** A picture of a season is never quite the same twice: it is taken anew where it is missing or asked for. */
async function showInReadme(picture: string): Promise<void> {
  if (existsSync(SHOWN_IN_README) && process.env.UPDATE_SCREENSHOT !== '1') return;
  await mkdir(dirname(SHOWN_IN_README), { recursive: true });
  await copyFile(picture, SHOWN_IN_README);
}
