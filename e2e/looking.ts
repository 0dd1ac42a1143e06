// Pictures of screens, to be looked at: they go where the reports of a run go, and are compared with nothing.

import { fileURLToPath } from 'node:url';
import type { Page, TestInfo } from '@playwright/test';

const OUTPUT = fileURLToPath(new URL('output/', import.meta.url));

/** Takes the whole length of a page; named by the screen, the width of the project and the scheme. */
export async function takePicture(
  page: Page,
  screen: string,
  { project, scheme }: { project: TestInfo['project']; scheme: string },
): Promise<void> {
  const name = `${screen.replaceAll(/\W+/g, '-')}-${project.name}-${scheme}.png`;
  await page.screenshot({ path: `${OUTPUT}pictures/${name}`, fullPage: true });
}
