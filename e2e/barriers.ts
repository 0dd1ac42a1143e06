// What keeps somebody out of a screen, measured by axe against WCAG 2.2 AA.

import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from '@playwright/test';

const STANDARD = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'];

/** One line for each element. In dark only the colours are others: what else axe asks is the same page. */
export async function barriers(page: Page, scheme: 'light' | 'dark'): Promise<string[]> {
  await page.emulateMedia({ colorScheme: scheme });
  const axe = new AxeBuilder({ page });
  const asked = scheme === 'dark' ? axe.withRules('color-contrast') : axe.withTags(STANDARD);
  const { violations } = await asked.analyze();
  return violations.flatMap(({ id, impact, nodes }) =>
    nodes.map(({ target }) => `${id} (${impact}) at ${target.join(' ')}`),
  );
}
