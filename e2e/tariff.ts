// A tariff being written at the browser: clauses by their place, and the blanks in their sentences.

import type { Locator, Page } from '@playwright/test';
import { expect } from './pianist.ts';

/** Adds a clause of a kind; it comes last, and open. */
export async function addClause(page: Page, kind: string): Promise<Locator> {
  const all = page.getByRole('group', { name: /^Clause \d+: / });
  const before = await all.count();
  await page.getByRole('button', { name: 'Add a clause' }).click();
  await page.getByRole('dialog').getByRole('button', { name: kind, exact: true }).click();
  await expect(all).toHaveCount(before + 1);
  return all.nth(before);
}

/** A figure or words in the sentence of a clause. */
export function blank(clause: Locator, name: string): Locator {
  return clause.getByRole('textbox', { name, exact: true });
}

/** Says in the sentence of a clause for which kind of call it is, and not for another. */
export async function forCalls(clause: Locator, kind: string, not?: string): Promise<void> {
  await clause.getByRole('button', { name: /^Kinds of call: / }).click();
  if (not !== undefined) await clause.getByRole('checkbox', { name: not, exact: true }).uncheck();
  await clause.getByRole('checkbox', { name: kind, exact: true }).check();
  await clause.getByRole('button', { name: 'Done' }).click();
}

/** The examples stand beside the clauses on a desk; on a phone the bar with their sums unfolds them. */
export async function openExamples(page: Page): Promise<void> {
  const bar = page.getByRole('button', { name: /Show the examples/ });
  if (await bar.isVisible()) await bar.click();
}
