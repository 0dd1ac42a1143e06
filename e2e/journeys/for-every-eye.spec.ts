// Every main screen, in light and in dark, measured by axe against WCAG 2.2 AA, and pictures of it to be looked at.

import type { Page, TestInfo } from '@playwright/test';
import { barriers } from '../barriers.ts';
import { openExample } from '../example.ts';
import { takePicture } from '../looking.ts';
import { expect, openBook, test } from '../pianist.ts';
import { screens } from '../screens.ts';

test('an empty book can be read by everybody', async ({ page, server }, { project }) => {
  await openBook(page, server);
  await look(page, 'an empty book', project);
});

test('every screen of a season can be read by everybody', async ({ page, server }, { project }) => {
  await openExample(page, server);
  for (const [screen, open] of Object.entries(screens)) {
    await test.step(screen, async () => {
      await open(page);
      await look(page, screen, project);
      await page.goto('/');
    });
  }
});

async function look(page: Page, screen: string, project: TestInfo['project']): Promise<void> {
  const part = (await page.getByRole('dialog').isVisible()) ? 'in sight' : 'whole';
  for (const scheme of ['dark', 'light'] as const) {
    expect.soft(await barriers(page, scheme), `${screen} in ${scheme}`).toEqual([]);
    await takePicture(page, screen, { project, scheme, part });
  }
}
