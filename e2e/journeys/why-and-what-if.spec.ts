// A payer doubts an amount, and is answered: why it is this much, and what it would be if something happened.

import type { Locator, Page } from '@playwright/test';
import { askFor, keep } from '../agreed.ts';
import { barriers } from '../barriers.ts';
import { dayFromToday } from '../days.ts';
import { openEngagement, openExample } from '../example.ts';
import { takePicture } from '../looking.ts';
import { expect, goTo, openBook, test } from '../pianist.ts';
import { readPdf } from '../reading.ts';

type Look = (screen: string) => Promise<void>;

/** Pictures in both schemes, and what axe finds in the way. */
function looking(page: Page, project: Parameters<typeof takePicture>[2]['project']): Look {
  return async (screen) => {
    const part = (await page.getByRole('dialog').isVisible()) ? 'in sight' : 'whole';
    for (const scheme of ['dark', 'light'] as const) {
      await page.emulateMedia({ colorScheme: scheme });
      await takePicture(page, screen, { project, scheme, part });
      expect.soft(await barriers(page, scheme), `${screen} in ${scheme}`).toEqual([]);
    }
  };
}

test('every sum of a season opens to who owes it, for what, and how that was worked out', async ({
  page,
  server,
}, { project }) => {
  const look = looking(page, project);
  await openExample(page, server);
  await test.step('what is owed opens down to the lines of an invoice', () => openOwed(page, look));
  await test.step('what is earned opens down to the lines of a statement', () => openEarned(page, look));
  await test.step('the total of an invoice can be copied to answer with', () => copyTotal(page, look));
  await test.step('what is owed on it is what it asked for, less what came in', () =>
    openInvoice(page, look));
  await test.step('hours covered have their own account', () => openCovered(page, look));
});

async function openOwed(page: Page, look: Look): Promise<void> {
  const row = page.getByRole('table', { name: 'What is owed' }).getByRole('row');
  const owed = row.filter({ hasText: 'Quaymarrow Conservatoire' }).getByRole('button');
  // From the keyboard, and back to where one was.
  await owed.focus();
  await page.keyboard.press('Enter');
  const sheet = page.getByRole('dialog', { name: 'Invoiced and owed, Quaymarrow Conservatoire' });
  await sheet.getByText('Quaymarrow Conservatoire: Voice juries, third year').click();
  // Six juries of 52.00 and a rehearsal of two hours at 48.00, of which 200.00 came in.
  await expect(sheet.getByText('408.00 \u2212 200.00 = 208.00')).toBeVisible();
  await sheet.getByText('Total', { exact: true }).click();
  await sheet.getByText('Rehearsal', { exact: false }).first().click();
  await expect(sheet.getByText('2 × 48.00 = 96.00')).toBeVisible();
  await look('why something is owed');
  await page.keyboard.press('Escape');
  await expect(sheet).toBeHidden();
  await expect(owed).toBeFocused();
}

async function openEarned(page: Page, look: Look): Promise<void> {
  const earned = page.getByRole('region', { name: 'What is earned' });
  const month = earned.getByRole('listitem').first();
  await month.locator('summary').first().click();
  await month.locator('summary').nth(1).click();
  await month.locator('summary').nth(2).click();
  await expect(month.getByText(/ × \d/).first()).toBeVisible();
  await look('why something is earned');
}

async function copyTotal(page: Page, look: Look): Promise<void> {
  await goTo(page, 'Invoices');
  const row = page.getByRole('row').filter({ hasText: 'Voice juries, third year' });
  await row.getByRole('button', { name: /^Total of invoice / }).click();
  const sheet = page.getByRole('dialog');
  await expect(sheet.getByText('€408.00')).toBeVisible();
  await look('why an invoice asks for its total');
  await page.context().grantPermissions(['clipboard-read', 'clipboard-write']);
  await sheet.getByRole('button', { name: 'Copy as text' }).last().click();
  await expect(sheet.getByText('Copied.')).toBeVisible();
  const text = await page.evaluate(() => navigator.clipboard.readText());
  expect(text).toContain('Total: €408.00.');
  expect(text).toContain('It goes by: played 2 h; charged 2 h.');
  expect(text).toContain('Worked out: 2 × 48.00 = 96.00.');
  await page.keyboard.press('Escape');
}

async function openInvoice(page: Page, look: Look): Promise<void> {
  const row = page.getByRole('row').filter({ hasText: 'Voice juries, third year' });
  await row.getByRole('rowheader').getByRole('link').click();
  const asked = page.getByRole('region', { name: 'What it asks for' });
  await asked.getByText('Owed', { exact: true }).click();
  await expect(asked.getByText('408.00 \u2212 200.00 = 208.00')).toBeVisible();
  const paid = page.getByRole('region', { name: 'Payments' }).getByRole('listitem').first();
  await paid.locator('summary').first().click();
  await expect(paid.getByText(/^For invoice /)).toBeVisible();
  await look('why something is owed on an invoice');
  const link = page.getByRole('link', { name: 'Open the PDF' });
  const answer = await page.request.get((await link.getAttribute('href')) ?? '');
  const printed = await readPdf(await answer.body());
  expect(printed).toContain('How it is worked out');
  expect(printed).toContain('played 2 h, charged 2 h; 2 × 48.00 = 96.00');
}

async function openCovered(page: Page, look: Look): Promise<void> {
  await openEngagement(page, 'Autumn term, strings');
  const statement = page.getByRole('region', { name: 'Statement' });
  await expect(statement.getByRole('heading', { name: 'Hours covered' })).toBeVisible();
  await expect(statement.getByText(/^The school covers 12 hours/).first()).toBeVisible();
  await statement.getByText('The account').click();
  await expect(statement.getByText(/ draws .* leaves /).first()).toBeVisible();
  await look('an engagement with hours covered');
}

/** 40.00 an hour; free with three days' notice, half with one; a tenth a year for paying late. */
const TARIFF = {
  name: 'By the hour, with notice',
  currency: 'EUR',
  from: '2026-01-01',
  clauses: [
    { id: 'hours', kind: 'hourly', terms: { price: '40.00' } },
    {
      id: 'notice',
      kind: 'cancellation',
      terms: {
        scale: [
          { before: 72, owes: { owes: 'nothing' } },
          { before: 24, owes: { owes: 'share', share: 5000 } },
        ],
        otherwise: { owes: 'all' },
      },
    },
    { id: 'late', kind: 'late-payment', terms: { by: { as: 'yearly rate', rate: 1000 } } },
  ],
};

test('whoever asks “what if?” sees what cancelling, moving, lengthening and paying late would cost', async ({
  page,
  server,
}, { project }) => {
  const look = looking(page, project);
  await openBook(page, server);
  await test.step('agrees on two calls of an hour', () => agree(page));
  await test.step('reads what each thing would come to', () => readCases(page));
  await test.step('opens one to its why', () => openCase(page, look));
  await test.step('asks it otherwise', () => askOtherwise(page));
  await test.step('sees when cancelling begins to cost', () => readCurve(page, look));
  await test.step('asks why before anything is cancelled, and is back where one was', () => askBefore(page));
});

async function agree(page: Page): Promise<void> {
  const tariff = await keep(page, 'tariffs', TARIFF);
  const { id } = await askFor(page, {
    title: 'Songs with Solveig',
    soloist: 'Solveig Arendt',
    calls: [
      { kind: 'rehearsal', on: dayFromToday(10), from: '10:00', until: '11:00' },
      { kind: 'recital', on: dayFromToday(20), from: '19:00', until: '20:00' },
    ],
  });
  const validUntil = dayFromToday(14);
  await keep(page, `engagements/${id}/quote`, { tariff: tariff.id, version: 1, validUntil });
  await keep(page, `engagements/${id}/agree`, { acceptedBy: 'Solveig Arendt' });
  await page.goto(`/engagements/${id}`);
}

/** What a case comes to, by the beginning of its name. */
function caseOf(page: Page, name: string | RegExp): Locator {
  const table = page.getByRole('table', { name: 'What if?' });
  return table.getByRole('row').filter({ has: page.getByRole('rowheader', { name }) });
}

async function readCases(page: Page): Promise<void> {
  // Two hours at 40.00; 30 of 365 days of a tenth of 80.00 are 0.66.
  for (const [name, total] of [
    ['All goes as agreed', '80.00'],
    ['It is cancelled now', '40.00'],
    [/^It is cancelled on the day you chose/, '60.00'],
    ['It lasts an hour longer', '120.00'],
    [/^It is moved to/, '80.00'],
    ['It is paid 30 days late', '80.66'],
  ] as const) {
    await expect(caseOf(page, name).getByRole('button').first()).toContainText(total);
  }
}

async function openCase(page: Page, look: Look): Promise<void> {
  await caseOf(page, 'It is paid 30 days late').getByRole('button').first().click();
  const sheet = page.getByRole('dialog', { name: 'It is paid 30 days late' });
  await expect(sheet.getByText('80.00 + 0.66 = 80.66')).toBeVisible();
  await sheet.getByText('For paying 30 days late').click();
  await expect(sheet.getByText('10 % × 80.00 × 30 days / 365 = 0.66')).toBeVisible();
  await look('why it would cost more paid late');
  await page.keyboard.press('Escape');
  await caseOf(page, 'It is cancelled now').getByRole('button').last().click();
  await expect(page.getByRole('dialog').getByText('40.00 \u2212 80.00 = \u221240.00')).toBeVisible();
  await page.keyboard.press('Escape');
}

async function askOtherwise(page: Page): Promise<void> {
  await page.getByText('Ask it otherwise: who, why, when').click();
  await page.getByLabel('Paid late by').fill('73');
  // A fifth of a year: 1.60.
  await expect(caseOf(page, 'It is paid 73 days late').getByRole('button').first()).toContainText('81.60');
  await page.getByLabel('The pianist').check();
  await expect(
    caseOf(page, /^It is cancelled on the day/)
      .getByRole('button')
      .first(),
  ).toContainText('40.00');
  await page.getByLabel('The payer or soloist').check();
  await page.getByLabel('Cancelled on a day of your choice').fill(dayFromToday(9));
  await page.getByLabel('At', { exact: true }).fill('10:30');
  await expect(
    caseOf(page, /^It is cancelled on the day/)
      .getByRole('button')
      .first(),
  ).toContainText('80.00');
}

async function readCurve(page: Page, look: Look): Promise<void> {
  const table = page.getByRole('table', { name: 'What cancelling everything costs, until the first call' });
  // The recital can still be cancelled for nothing whenever word comes before the rehearsal.
  for (const [letter, total] of [
    ['A', '0.00'],
    ['B', '20.00'],
    ['C', '40.00'],
  ] as const) {
    const row = table.getByRole('row').filter({ has: page.getByText(letter, { exact: true }) });
    await expect(row.getByRole('button')).toContainText(total);
  }
  await expect(table.getByRole('row').filter({ hasText: '10:00' })).toHaveCount(2);
  await expect(page.getByText('Times are as the clocks of Berlin show them.')).toBeVisible();
  await table.getByRole('button').last().click();
  await expect(
    page
      .getByRole('dialog')
      .getByText(/^Rehearsal/)
      .first(),
  ).toBeVisible();
  await page.keyboard.press('Escape');
  await look('what if');
}

async function askBefore(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Cancel what is still ahead' }).click();
  const dialog = page.getByRole('dialog', { name: 'Cancel everything still ahead' });
  const stands = dialog.getByRole('button', { name: 'It stands at: €80.00' });
  await stands.click();
  const sheet = page.getByRole('dialog', { name: 'It stands at' });
  await expect(sheet.getByText('40.00 + 40.00 = 80.00')).toBeVisible();
  await page.keyboard.press('Escape');
  await expect(sheet).toBeHidden();
  await expect(dialog).toBeVisible();
  await expect(stands).toBeFocused();
  await page.keyboard.press('Escape');
  await expect(dialog).toBeHidden();
}
