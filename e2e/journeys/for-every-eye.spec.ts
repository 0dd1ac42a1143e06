// Every main screen, in light and in dark, measured by axe against WCAG 2.2 AA, and pictures of it to be looked at.

import { AxeBuilder } from '@axe-core/playwright';
import type { Page, TestInfo } from '@playwright/test';
import { openExample } from '../example.ts';
import { takePicture } from '../looking.ts';
import { expect, openBook, test } from '../pianist.ts';
import { screens } from '../screens.ts';

const STANDARD = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

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

/** In dark only the colours are others: what else axe asks is the same page. */
async function look(page: Page, screen: string, project: TestInfo['project']): Promise<void> {
  const part = (await page.getByRole('dialog').isVisible()) ? 'in sight' : 'whole';
  for (const scheme of ['dark', 'light'] as const) {
    await page.emulateMedia({ colorScheme: scheme });
    await takePicture(page, screen, { project, scheme, part });
    const axe = new AxeBuilder({ page });
    const asked = scheme === 'dark' ? axe.withRules('color-contrast') : axe.withTags(STANDARD);
    expect.soft(await barriers(asked), `${screen} in ${scheme}`).toEqual([]);
  }
}

/** What keeps somebody out, and where: one line for each element. */
async function barriers(asked: AxeBuilder): Promise<string[]> {
  const { violations } = await asked.analyze();
  return violations.flatMap(({ id, impact, nodes }) =>
    nodes.map(({ target }) => `${id} (${impact}) at ${target.join(' ')}`),
  );
}
