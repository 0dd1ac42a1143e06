// The main screens, in the example season, and how each is reached. For journeys that ask the same of all of them.

import type { Page } from '@playwright/test';
import { openEngagement } from './example.ts';
import { expect, goTo } from './pianist.ts';

/** Opens each screen; the one before need not be left in order. */
export const screens: Readonly<Record<string, (page: Page) => Promise<void>>> = {
  season: (page) => goTo(page, 'Season'),
  engagements: (page) => goTo(page, 'Engagements'),
  'an inquiry being written': async (page) => {
    await goTo(page, 'Engagements');
    await page.getByRole('link', { name: 'Enter an inquiry' }).click();
    await page.getByRole('button', { name: 'Add a work' }).click();
  },
  'an engagement': async (page) => {
    await openEngagement(page, 'Jury: Mirembe Okalo, viola');
    await page.getByRole('region', { name: 'Statement' }).locator('summary').first().click();
  },
  'a call marked played': async (page) => {
    await openEngagement(page, 'Jury: Mirembe Okalo, viola');
    await page
      .getByRole('button', { name: /^What else can be said of/ })
      .first()
      .click();
    await page.getByRole('dialog').getByRole('button', { name: 'Correct the times' }).click();
  },
  'an invoice about to be issued': async (page) => {
    await openEngagement(page, 'Jury: Mirembe Okalo, viola');
    await page.getByRole('button', { name: 'Invoice Mirembe Okalo' }).first().click();
    await expect(page.getByRole('button', { name: 'Issue it' })).toBeVisible();
  },
  'a quote being made': async (page) => {
    await openEngagement(page, 'Recording for a summer school: Haruna Sekizawa');
    await page.getByRole('button', { name: 'Quote', exact: true }).click();
    await expect(page.getByRole('button', { name: 'Quote it' })).toBeVisible();
  },
  invoices: (page) => goTo(page, 'Invoices'),
  'an invoice': async (page) => {
    await goTo(page, 'Invoices');
    const row = page.getByRole('row').filter({ hasText: 'Voice juries, third year' });
    await row.getByRole('rowheader').getByRole('link').click();
    await expect(page.getByRole('heading', { level: 1, name: /^Invoice / })).toBeVisible();
  },
  tariffs: (page) => goTo(page, 'Tariffs'),
  'a tariff': async (page) => {
    await goTo(page, 'Tariffs');
    await page.getByRole('link', { name: 'Example: recital package' }).click();
    await expect(page.getByRole('heading', { name: 'Example: recital package' })).toBeVisible();
  },
  'a tariff being written': async (page) => {
    await goTo(page, 'Tariffs');
    await page.getByRole('link', { name: 'Example: recital package' }).click();
    await page.getByRole('button', { name: 'Begin a new version' }).click();
    await page.getByRole('region', { name: 'Clauses' }).locator('summary').first().click();
    // On a phone the sums of the examples lie over what is scrolled below them: at its end, over nothing.
    await page.evaluate(() => window.scrollTo(0, document.body.scrollHeight));
  },
  practice: (page) => goTo(page, 'Practice'),
};
