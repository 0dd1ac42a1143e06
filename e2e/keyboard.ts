// Hands on the keyboard only: walks by Tab, and at each step asks whether one sees where one is.

import type { Locator, Page } from '@playwright/test';
import { expect } from './pianist.ts';

/** More steps than any screen has; a walk that takes more goes round in a circle. */
const FAR = 150;

/** Walks by Tab (back, by Shift+Tab) until the element has the focus. */
export async function walkTo(page: Page, target: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  await expect(target).toBeVisible();
  for (let step = 0; step < FAR; step++) {
    if (await isFocused(target)) return;
    await page.keyboard.press(key);
    await seesWhereItIs(page);
  }
  await expect(target, `reached by ${FAR} times ${key}`).toBeFocused();
}

function isFocused(target: Locator): Promise<boolean> {
  return target.evaluate((element) => element === document.activeElement);
}

/** What has the focus is in sight, and is outlined: a call on a stave by a ring around its head. */
export async function seesWhereItIs(page: Page): Promise<void> {
  const focused = page.locator(':focus');
  // Behind the last element the focus is the browser's own, and shown by it.
  if ((await focused.count()) === 0) return;
  await expect(focused).toBeInViewport();
  const { outlined, ringed, what } = await focused.evaluate((element) => {
    const { outlineStyle, outlineWidth } = getComputedStyle(element);
    const paths = [...element.querySelectorAll('path')];
    return {
      outlined: outlineStyle !== 'none' && outlineWidth !== '0px',
      ringed: paths.some((path) => getComputedStyle(path).stroke !== 'none'),
      what: element.outerHTML.slice(0, 160),
    };
  });
  expect(outlined || ringed, `the focus is seen on ${what}`).toBe(true);
}
