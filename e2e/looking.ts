// Pictures of screens, to be looked at: they go where the reports of a run go, and are compared with nothing.

import { fileURLToPath } from 'node:url';
import type { Page, TestInfo } from '@playwright/test';

const PICTURES = fileURLToPath(new URL('output/pictures/', import.meta.url));

interface Picture {
  readonly project: TestInfo['project'];
  readonly scheme: 'light' | 'dark';
  /** The whole length of the page, or what is in sight: then an open dialog is seen as it stands. */
  readonly part: 'whole' | 'in sight';
}

/** Takes a picture, named by the screen, the width of the project and the scheme; gives where it is. */
export async function takePicture(
  page: Page,
  screen: string,
  { project, scheme, part }: Picture,
): Promise<string> {
  const path = `${PICTURES}${screen.replaceAll(/\W+/g, '-')}-${project.name}-${scheme}.png`;
  await page.screenshot({ path, fullPage: part === 'whole' });
  return path;
}
