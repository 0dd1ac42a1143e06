// Peculiar terms at work on one engagement: what it costs to move a call, and that what is not paid is not played.

import type { Locator, Page } from '@playwright/test';
import { askFor, keep } from '../agreed.ts';
import { barriers } from '../barriers.ts';
import { dayFromToday } from '../days.ts';
import { expect, isTold, openBook, test } from '../pianist.ts';

const TARIFF = {
  name: 'Lessons for members',
  currency: 'EUR',
  from: '2026-01-01',
  clauses: [
    { id: 'hours', kind: 'hourly', terms: { price: '60.00' } },
    {
      id: 'members',
      kind: 'discount',
      for: { memberships: ['guild member'] },
      terms: { what: 'Guild member', by: { as: 'share', share: 1000 } },
    },
    { id: 'changes', kind: 'change', terms: { free: 0, noticeHours: 48, after: [5000] } },
    { id: 'due', kind: 'payment', terms: { due: [{ event: 'agreement', days: 0 }], gate: true } },
  ],
};

test('a rehearsal that the soloist moves costs half of it more, and is played before it is paid for a reason that is kept', async ({
  page,
  server,
}) => {
  await openBook(page, server);
  await test.step('enters a member in the words of the tariff', () => enterMember(page));
  await test.step('agrees on terms', () => agree(page));
  await test.step('sees what moving costs before it is kept', () => move(page));
  await test.step('is told that another call stands at the same time', () => moveIntoAnother(page));
  await test.step('sees that the calls wait for the money', () => seeBlock(page));
  await test.step('lifts the block of one, and the reason stays', () => lift(page));
  await test.step('is paid, and nothing is blocked any more', () => bePaid(page));
});

const OTHER = dayFromToday(6);

async function enterMember(page: Page): Promise<void> {
  await keep(page, 'tariffs', TARIFF);
  await keep(page, 'seasons', { name: 'This season', from: dayFromToday(-20), to: dayFromToday(40) });
  await askFor(page, {
    title: 'Choir of Erlengrund',
    soloist: 'Anselm Kreuzer',
    calls: [{ kind: 'rehearsal', on: OTHER, from: '10:00', until: '11:00' }],
  });
  const { id } = await askFor(page, {
    title: 'Songs with Solveig',
    soloist: 'Solveig Arendt',
    calls: [
      { kind: 'rehearsal', on: dayFromToday(4), from: '10:00', until: '11:00' },
      { kind: 'recital', on: dayFromToday(12), from: '19:00', until: '21:00' },
    ],
  });
  await page.goto(`/engagements/${id}`);
  await page.getByRole('button', { name: 'Title and people' }).click();
  const dialog = page.getByRole('dialog');
  // A tariff asks for it, so it is in sight; what none asks is folded away.
  const membership = dialog.getByLabel('Membership (optional)');
  await expect(membership).toBeVisible();
  await expect(dialog.getByLabel('Course of study (optional)')).toBeHidden();
  await expect(dialog.locator('datalist option[value="guild member"]')).toHaveCount(1);
  await membership.fill('guild member');
  await isForEverybody(page);
  await dialog.getByRole('button', { name: 'Save' }).click();
  await isTold(page, 'The change is kept.');
}

async function agree(page: Page): Promise<void> {
  const dialog = page.getByRole('dialog');
  await page.getByRole('button', { name: 'Quote', exact: true }).click();
  // Three hours at 60.00 are 180.00; a tenth less is 162.00.
  await expect(dialog.getByText('€162.00').first()).toBeVisible();
  await dialog.getByRole('button', { name: 'Quote it' }).click();
  await page.getByRole('button', { name: 'They said yes' }).click();
  await dialog.getByRole('button', { name: 'Freeze it so' }).click();
  await isTold(page, '“Songs with Solveig” is agreed.');
}

async function move(page: Page): Promise<void> {
  const dialog = await openMove(page);
  await expect(dialog.getByText('Whose wish is it?')).toHaveCount(0);
  await dialog.getByLabel('From').fill('14:00');
  await dialog.getByLabel('Until').fill('15:00');
  await expect(dialog.getByText('Moving calls: a change costs 50 % of the fee.')).toBeVisible();
  // Half of the rehearsal's 60.00 makes 210.00; a tenth less is 189.00.
  await expect(dialog.getByText('€189.00')).toBeVisible();
  await dialog.getByRole('radio', { name: 'The pianist’s' }).check();
  await expect(dialog.getByText('It comes to €162.00, as before.')).toBeVisible();
  await dialog.getByRole('radio', { name: 'The payer’s or soloist’s' }).check();
  await isForEverybody(page);
  await dialog.getByRole('button', { name: 'Keep it so' }).click();
  await isTold(page, /^Rehearsal, .* is changed\.$/);
  await expect(callsOn(page).getByText(/^moved from .*10:00.*, as the payer wished$/)).toBeVisible();
  await expect(page.getByRole('region', { name: 'Statement' }).getByText('€189.00').first()).toBeVisible();
}

async function moveIntoAnother(page: Page): Promise<void> {
  const dialog = await openMove(page);
  await dialog.getByLabel('Day').fill(OTHER);
  await dialog.getByLabel('From').fill('10:30');
  await dialog.getByLabel('Until').fill('11:30');
  await expect(
    dialog.getByText(/^At the same time: Rehearsal, 10:00.*“Choir of Erlengrund”\.$/),
  ).toBeVisible();
  await dialog.getByRole('button', { name: 'Not now' }).click();
}

async function seeBlock(page: Page): Promise<void> {
  const block = page.getByRole('region', { name: 'Not paid, not played' });
  await expect(block).toContainText('€189.00');
  await expect(block).toContainText('2 calls are blocked until it is paid');
  await block.locator('summary').click();
  await expect(block).toContainText('what is not paid by then is not played');
  await expect(callsOn(page).getByText('blocked: not paid')).toHaveCount(2);
  await isForEverybody(page);
}

async function lift(page: Page): Promise<void> {
  const dialog = await openMore(page, 'Rehearsal');
  await expect(dialog.getByRole('button', { name: 'Played' })).toHaveCount(0);
  await dialog.getByRole('button', { name: 'Lift the block' }).click();
  await dialog.getByLabel('Why you play it all the same').fill('promised for Friday');
  await dialog.getByRole('button', { name: 'Lift the block' }).click();
  await isTold(page, /^The block on Rehearsal, .* is lifted\.$/);
  await expect(callsOn(page).getByText(/^block lifted on .*: “promised for Friday”$/)).toBeVisible();
  await expect(callsOn(page).getByText('blocked: not paid')).toHaveCount(1);
}

async function bePaid(page: Page): Promise<void> {
  const dialog = page.getByRole('dialog');
  await page.getByRole('button', { name: 'Invoice Solveig Arendt' }).first().click();
  await dialog.getByRole('button', { name: 'Issue it' }).click();
  await isTold(page, /^Invoice \S+ is issued: €189\.00 to Solveig Arendt\.$/);
  await page.getByRole('button', { name: 'Record a payment', exact: true }).click();
  await dialog.getByRole('button', { name: 'Record it' }).click();
  await isTold(page, '€189.00 from Solveig Arendt is recorded.');
  await expect(page.getByRole('region', { name: 'Not paid, not played' })).toHaveCount(0);
  await expect(callsOn(page).getByText('blocked: not paid')).toHaveCount(0);
  await expect(callsOn(page).getByText(/^block lifted on .*: “promised for Friday”$/)).toBeVisible();
}

function callsOn(page: Page): Locator {
  return page.getByRole('region', { name: 'Calls' });
}

async function openMore(page: Page, call: string): Promise<Locator> {
  await callsOn(page)
    .getByRole('button', { name: new RegExp(`^What else can be said of ${call}`) })
    .click();
  return page.getByRole('dialog');
}

async function openMove(page: Page): Promise<Locator> {
  const dialog = await openMore(page, 'Rehearsal');
  await dialog.getByRole('button', { name: 'Move or rename it' }).click();
  return dialog;
}

async function isForEverybody(page: Page): Promise<void> {
  for (const scheme of ['dark', 'light'] as const) expect(await barriers(page, scheme), scheme).toEqual([]);
}
