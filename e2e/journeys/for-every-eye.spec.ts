// Every main screen, in light and in dark, measured by axe against WCAG 2.2 AA, and a picture of it to be looked at.

import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { openExample } from '../example.ts';
import { takePicture } from '../looking.ts';
import { expect, openBook, test } from '../pianist.ts';
import { screens } from '../screens.ts';

const STANDARD = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

for (const scheme of ['light', 'dark'] as const) {
  test.describe(`in ${scheme}`, () => {
    test.use({ colorScheme: scheme });

    test('an empty book can be read by everybody', async ({ page, server }, { project }) => {
      await openBook(page, server);
      await takePicture(page, 'an empty book', { project, scheme, part: 'whole' });
      expect(await barriers(page)).toEqual([]);
    });

    test('every screen of a season can be read by everybody', async ({ page, server }, { project }) => {
      await openExample(page, server);
      for (const [screen, open] of Object.entries(screens)) {
        await test.step(screen, async () => {
          await open(page);
          const part = (await page.getByRole('dialog').isVisible()) ? 'in sight' : 'whole';
          await takePicture(page, screen, { project, scheme, part });
          expect.soft(await barriers(page), screen).toEqual([]);
          await page.goto('/');
        });
      }
    });
  });
}

/** What keeps somebody out, and where: one line for each element. */
async function barriers(page: Page): Promise<string[]> {
  const { violations } = await new AxeBuilder({ page }).withTags(STANDARD).analyze();
  return violations.flatMap(({ id, impact, nodes }) =>
    nodes.map(({ target }) => `${id} (${impact}) at ${target.join(' ')}`),
  );
}
