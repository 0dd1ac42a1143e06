// No pointer anywhere: from the first page to an issued invoice, and in a tariff, by Tab, arrows and Enter, and the focus
// always in sight.

import type { Page } from '@playwright/test';
import { seesWhereItIs, walkTo } from '../keyboard.ts';
import { expect, isTold, openBook, test } from '../pianist.ts';
import { blank } from '../tariff.ts';

const ENGAGEMENT = 'Jury: Mirembe Okalo, viola';

test('whoever plays from the keyboard can work from it too', async ({ page, server }) => {
  await openBook(page, server);
  await test.step('opens the example', async () => {
    await walkTo(page, page.getByRole('button', { name: 'Open a worked example season' }));
    await page.keyboard.press('Enter');
    await expect(page.getByRole('region', { name: 'Score of the season' })).toBeVisible();
  });
  await test.step('finds a call in the score', () => findCall(page));
  await test.step('opens a line of the statement to its why', () => openLine(page));
  await test.step('issues the invoice', () => issue(page));
});

test('a figure is written where it stands, and the clause one is in can be moved', async ({
  page,
  server,
}) => {
  await openBook(page, server);
  await page.goto('/tariffs/new?example=hours');
  const clause = page.getByRole('group', { name: /^Clause \d+: Travel$/ });
  const price = blank(clause, 'For each unit of distance');
  await walkTo(page, price);
  await expect(price).toHaveValue('0.38');
  // What is entered stands marked, to be typed over; then the mark goes where it is sent, and stays there.
  await page.keyboard.type('0.42');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.type('11');
  await expect(price).toHaveValue('0.4112');
  await expect(price).toHaveAccessibleDescription(/has more decimals than/);
  await page.keyboard.press('Backspace');
  await page.keyboard.press('Backspace');
  await expect(price).toHaveValue('0.42');
  await expect(price).toHaveAccessibleDescription('');
  const before = placeOf(await clause.getAttribute('aria-label'));
  await page.keyboard.press('Alt+ArrowUp');
  await expect(clause).toHaveAccessibleName(`Clause ${before - 1}: Travel`);
  await expect(price).toBeFocused();
  await seesWhereItIs(page);
  await page.keyboard.press('Alt+ArrowDown');
  await expect(clause).toHaveAccessibleName(`Clause ${before}: Travel`);
  await expect(price).toBeFocused();
});

function placeOf(name: string | null): number {
  return Number(/\d+/.exec(name ?? '')?.[0]);
}

async function findCall(page: Page): Promise<void> {
  const staves = page.getByRole('region', { name: 'Score of the season' }).getByRole('group');
  await walkTo(page, staves.first().getByRole('link'));
  const conservatoire = page.getByRole('group', { name: /^Quaymarrow Conservatoire: / });
  for (let down = await staves.count(); down > 0; down--) {
    await page.keyboard.press('ArrowDown');
    await seesWhereItIs(page);
    if ((await conservatoire.locator(':focus').count()) > 0) break;
  }
  await page.keyboard.press('Home');
  const call = conservatoire.getByRole('link');
  while (!(await call.getAttribute('aria-label'))?.includes(ENGAGEMENT)) {
    const before = await call.getAttribute('aria-label');
    await page.keyboard.press('ArrowRight');
    await seesWhereItIs(page);
    expect(await call.getAttribute('aria-label'), 'a further call').not.toBe(before);
  }
  await page.keyboard.press('Enter');
  await expect(page.getByRole('heading', { level: 1, name: ENGAGEMENT })).toBeFocused();
}

async function openLine(page: Page): Promise<void> {
  const statement = page.getByRole('region', { name: 'Statement' });
  const line = statement.getByRole('listitem').filter({ hasText: 'Jury package' });
  await walkTo(page, line.locator('summary'));
  await page.keyboard.press('Enter');
  await expect(line.getByText('1 × 118.00 = 118.00')).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(line.getByText('1 × 118.00 = 118.00')).toBeHidden();
}

async function issue(page: Page): Promise<void> {
  const ask = page.getByRole('button', { name: 'Invoice Mirembe Okalo' });
  await walkTo(page, ask.last());
  await page.keyboard.press('Enter');
  const dialog = page.getByRole('dialog');
  await expect(dialog).toBeVisible();
  // Escape gives it up, and the focus goes back to where it was.
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
  await expect(ask.last()).toBeFocused();
  await page.keyboard.press('Enter');
  await walkTo(page, dialog.getByRole('button', { name: 'Issue it' }));
  await page.keyboard.press('Enter');
  await isTold(page, /^Invoice \S+ is issued: €\S+ to Mirembe Okalo\.$/);
  // What was pressed has gone: the focus begins at the title again.
  await expect(page.getByRole('heading', { level: 1, name: ENGAGEMENT })).toBeFocused();
}
