// What cannot be is refused in one sentence, beside the field that it is about, and nothing typed is lost.

import type { Locator, Page } from '@playwright/test';
import { agreeRehearsal } from '../agreed.ts';
import { expect, goTo, isTold, openBook, test } from '../pianist.ts';
import { addClause } from '../tariff.ts';

test.describe('a call', () => {
  test.beforeEach(async ({ page, server }) => {
    await openBook(page, server);
    await page.getByRole('link', { name: 'Enter an inquiry' }).click();
    await page.getByLabel('Title', { exact: true }).fill('Song evening');
    await page.getByLabel('Day').fill('2027-03-28');
    await page.getByLabel('From').fill('20:00');
    await page.getByLabel('Until').fill('21:00');
    await page.getByText('Name, condition, time zone').click();
    await page.getByLabel('Time zone of the place').fill('Europe/London');
  });

  test('cannot end before it starts', async ({ page }) => {
    const until = page.getByLabel('Until');
    await until.fill('19:30');
    await enterInquiry(page);
    await refuses(until, /It ends at 19:30, which is not after its start at 20:00/);
    await expect(until).toHaveValue('19:30');
    await expect(page.getByLabel('Title', { exact: true })).toHaveValue('Song evening');
    await until.fill('21:30');
    await enterInquiry(page);
    await isTold(page, '“Song evening” is entered.');
  });

  test('cannot begin at a time that clocks skip that night', async ({ page }) => {
    const from = page.getByLabel('From');
    await from.fill('01:30');
    await page.getByLabel('Until').fill('03:00');
    await enterInquiry(page);
    await refuses(from, /01:30 on 2027-03-28 does not exist in Europe\/London: clocks go forward that night/);
    await expect(from).toHaveValue('01:30');
    await expect(page.getByLabel('Until')).toHaveValue('03:00');
  });

  test('cannot be at two times: which of two like ones is asked, in the night when clocks go back', async ({
    page,
  }) => {
    await page.getByLabel('From').fill('01:15');
    await page.getByLabel('Until').fill('01:45');
    await expect(page.getByText(/^Clocks go back that night/)).toHaveCount(0);
    await page.getByLabel('Day').fill('2027-10-31');
    const start = page.getByRole('group', { name: 'Which 01:15 does it start at?' });
    await start.getByRole('radio', { name: 'The second' }).check();
    await enterInquiry(page);
    // From the second 01:15 until the first 01:45 is half an hour backwards.
    const until = page.getByLabel('Until');
    await refuses(until, /It ends at 01:45, which is not after its start at 01:15/);
    const end = page.getByRole('group', { name: 'Which 01:45 does it end at?' });
    await end.getByRole('radio', { name: 'The second' }).check();
    await enterInquiry(page);
    await isTold(page, '“Song evening” is entered.');
    await page.getByRole('button', { name: /^What else can be said of Rehearsal/ }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Move or rename it' }).click();
    for (const which of [start, end]) {
      await expect(which.getByRole('radio', { name: 'The second' })).toBeChecked();
    }
  });

  test('cannot be in a zone that is none', async ({ page }) => {
    const zone = page.getByLabel('Time zone of the place');
    await zone.fill('Europe/Erlengrund');
    await enterInquiry(page);
    await refuses(zone, /“Europe\/Erlengrund” is not a time zone/);
    await expect(zone).toHaveValue('Europe/Erlengrund');
    await goTo(page, 'Engagements');
    await expect(page.getByText('No engagement yet')).toBeVisible();
  });
});

function enterInquiry(page: Page): Promise<void> {
  return page.getByRole('button', { name: 'Enter it' }).click();
}

test.describe('a tariff', () => {
  test.beforeEach(async ({ page, server }) => {
    await openBook(page, server);
    await page.getByRole('link', { name: 'Write a tariff' }).click();
    await page.getByLabel('Name of the tariff').fill('Lessons');
    await addClause(page, 'Rate for time');
  });

  test('cannot ask for half a cent', async ({ page }) => {
    const price = page.getByRole('textbox', { name: 'Price', exact: true });
    await price.fill('45.005');
    await refuses(price, /“45\.005” has more decimals than EUR has: EUR has 2 decimals/);
    await keepTariff(page);
    await expect(price).toHaveValue('45.005');
    await expect(page.getByLabel('Name of the tariff')).toHaveValue('Lessons');
    await price.fill('45.00');
    await keepTariff(page);
    await isTold(page, 'The tariff “Lessons” is kept.');
  });

  test('cannot charge in steps of no minutes', async ({ page }) => {
    const steps = page.getByLabel('Charged in steps of (minutes)');
    await steps.fill('0');
    await refuses(steps, /“Charged in steps of \(minutes\)” lies between 1 and 44640; 0 does not/);
    await keepTariff(page);
    await expect(steps).toHaveValue('0');
  });

  test('cannot price the same call twice, and names both clauses that would', async ({ page }) => {
    await addClause(page, 'Rate for time');
    const price = page.getByRole('textbox', { name: 'Price', exact: true }).last();
    await price.fill('50');
    await keepTariff(page);
    await expect(page.getByRole('heading', { level: 1, name: 'New tariff' })).toBeVisible();
    await expect(
      page.getByText('Clauses “hourly” and “hourly-2” contradict: both put a price on the same calls.'),
    ).toBeVisible();
    await expect(price).toHaveValue('50.00');
  });
});

function keepTariff(page: Page): Promise<void> {
  return page.getByRole('button', { name: 'Keep the tariff' }).click();
}

test('more than is owed is offered as credit, and kept', async ({ page, server }) => {
  await openBook(page, server);
  await invoiceRehearsal(page);
  await page.getByRole('button', { name: 'Record a payment' }).first().click();
  const dialog = page.getByRole('dialog');
  const amount = dialog.getByLabel('Amount received');
  await expect(amount).toHaveValue('45.00');
  await amount.fill('50');
  await dialog.getByLabel('Reference').fill('In an envelope');
  await dialog.getByRole('button', { name: 'Record it' }).click();
  await refuses(amount, /Only 45\.00 is owed on invoice \S+\. Keep the other 5\.00 as credit/);
  await expect(amount).toHaveValue('50');
  await expect(dialog.getByLabel('Reference')).toHaveValue('In an envelope');
  await dialog.getByRole('button', { name: 'Keep €5.00 as credit' }).click();
  await isTold(page, '€50.00 from Solveig Arendt is recorded, of which €5.00 is kept as credit.');
  await expect(page.getByText('€5.00 of it kept as credit')).toBeVisible();
});

/** An hour at 45.00, played and invoiced. */
async function invoiceRehearsal(page: Page): Promise<void> {
  const title = await agreeRehearsal(page);
  await goTo(page, 'Engagements');
  await page.getByRole('link', { name: title }).click();
  await page.getByRole('button', { name: /^Played: Rehearsal/ }).click();
  await page.getByRole('button', { name: 'It was played so' }).click();
  await page.getByRole('button', { name: 'Invoice Solveig Arendt' }).first().click();
  await page.getByRole('button', { name: 'Issue it' }).click();
  await isTold(page, /^Invoice \S+ is issued: €45\.00/);
}

/** The sentence stands beside the field: the field is marked, and described by it. */
async function refuses(field: Locator, sentence: RegExp): Promise<void> {
  await expect(field).toHaveAttribute('aria-invalid', 'true');
  await expect(field).toHaveAccessibleDescription(sentence);
}
