// The whole job once, on terms that a pianist has published: from the tariff to the payment, and into the season.
// Policy: freelance organist and pianist, own policy page "Gage" (fidirallala.de/gage, undated), in our own words:
// a service is 100 euro, each requested piece 30, a rehearsal with other musicians 50, a kilometre 0.35.
// Its case, a wedding with singer: one service, two requests, one rehearsal, 40 km. 100 + 60 + 50 + 14 = 224.00.

import type { Locator, Page } from '@playwright/test';
import { dayFromToday } from '../days.ts';
import { expect, goTo, isTold, openBook, test } from '../pianist.ts';
import { readPdf } from '../reading.ts';
import { addClause, blank, forCalls, openExamples } from '../tariff.ts';

const REHEARSED = dayFromToday(-3);
const PLAYED = dayFromToday(-1);
const AHEAD = dayFromToday(20);

/** Each line as the statement says it, and what it opens to. */
const LINES = [
  { line: 'Service', clause: 'Services are 100.00 each.', arithmetic: '1 × 100.00 = 100.00' },
  {
    line: 'Preparation',
    clause: 'Preparation: 30.00 for each requested work.',
    arithmetic: '2 × 30.00 = 60.00',
  },
  { line: 'Rehearsal', clause: 'Rehearsals are 50.00 each.', arithmetic: '1 × 50.00 = 50.00' },
  { line: 'Travel', clause: 'Travel is 0.35 a km.', arithmetic: '40 × 0.35 = 14.00' },
] as const;

/** Each line as the invoice prints it. */
const PRINTED = [
  'Service 1 service 100.00 100.00',
  'Preparation 2 requested works 30.00 60.00',
  'Rehearsal 1 rehearsal 50.00 50.00',
  'Travel, Uferweg to St. Ida 40 km 0.35 14.00',
  'To pay €224.00',
];

test('a wedding with singer comes to 224 euro, from the inquiry to the payment', async ({ page, server }) => {
  await openBook(page, server);
  await test.step('says who writes, from where, in which money', () => introduce(page));
  await test.step('writes down the published tariff and sees it priced', () => writeTariff(page));
  await test.step('enters an inquiry with three calls and two requests', () => enterInquiry(page));
  await test.step('quotes 210 euro before travel', () => quote(page));
  await test.step('hears yes', () => agree(page));
  await test.step('says how the calls went', () => playCalls(page));
  await test.step('writes down the journey', () => travel(page));
  await test.step('releases the second service', () => release(page));
  await test.step('sees every amount open to its why', () => openLines(page));
  await test.step('issues the invoice and reads its PDF back', () => invoice(page));
  await test.step('records the payment and settles', () => bePaid(page));
  await test.step('sees it in the season', () => lookAtSeason(page));
});

async function introduce(page: Page): Promise<void> {
  await goTo(page, 'Practice');
  await page.getByLabel('Name').fill('Hannelore Brandis, piano');
  await page.getByLabel('Address').fill('Uferweg 4\n00000 Erlengrund');
  await page.getByLabel('How to pay you').fill('Account XX00 0000 0000');
  await page.getByLabel('Currency').fill('EUR');
  await page.getByLabel('Time zone').fill('Europe/Berlin');
  await page.getByLabel('Language and region').fill('en-GB');
  await page.getByRole('button', { name: 'Keep these' }).click();
  await isTold(page, 'The practice is kept as you wrote it.');
}

async function writeTariff(page: Page): Promise<void> {
  await goTo(page, 'Tariffs');
  await page.getByRole('link', { name: 'Write down a tariff' }).click();
  await page.getByLabel('Name of the tariff').fill('Weddings and services');
  await page.getByLabel('Begins on').fill('2026-01-01');
  await addFee(page, '100', 'Service');
  const preparation = await addClause(page, 'Fixed fee');
  await blank(preparation, 'Price').fill('30');
  await preparation.getByRole('combobox', { name: 'For each' }).selectOption('requested work');
  await blank(preparation, 'Called').fill('Preparation');
  await addFee(page, '50', 'Rehearsal');
  await blank(await addClause(page, 'Travel'), 'For each unit of distance').fill('0.35');
  await seeExample(page);
  await page.getByRole('button', { name: 'Keep the tariff' }).click();
  await isTold(page, 'The tariff “Weddings and services” is kept.');
  for (const { clause } of LINES) await expect(page.getByText(clause)).toBeVisible();
}

/** The fee that one starts from is for juries. */
async function addFee(page: Page, price: string, kind: string): Promise<void> {
  const fee = await addClause(page, 'Fixed fee');
  await blank(fee, 'Price').fill(price);
  await forCalls(fee, kind, 'Jury');
}

async function seeExample(page: Page): Promise<void> {
  await openExamples(page);
  const example = page.getByRole('region', { name: 'An example, priced as you type' });
  // One service, one rehearsal, one request, 40 km: 100 + 50 + 30 + 14.
  await expect(example.getByText('€194.00')).toBeVisible();
  await example.getByRole('button', { name: 'Add a work' }).click();
  await expect(example.getByText('€224.00')).toBeVisible();
}

async function enterInquiry(page: Page): Promise<void> {
  await goTo(page, 'Engagements');
  await page.getByRole('link', { name: 'Enter an inquiry' }).click();
  await page.getByLabel('Title', { exact: true }).fill('Wedding with singer');
  await page.getByLabel('Soloist (optional)').fill('Mirjam Ostheim');
  await page.getByLabel('Payer').fill('Jonas Ostheim');
  await page.getByLabel('Institution').fill('St. Ida, Erlengrund');
  await writeCall(page, 1, { kind: 'Rehearsal', on: REHEARSED, from: '18:00', until: '19:00' });
  await page.getByRole('button', { name: 'Add a call' }).click();
  await writeCall(page, 2, { kind: 'Service', on: PLAYED, from: '14:00', until: '15:00' });
  await page.getByRole('button', { name: 'Add a call' }).click();
  await writeCall(page, 3, { kind: 'Service', on: AHEAD, from: '14:00', until: '15:00' });
  await condition(page, 3, 'a second ceremony is held');
  await writeWork(page, 1, 'Entrance song');
  await writeWork(page, 2, 'Song after the vows');
  await page.getByRole('button', { name: 'Enter it' }).click();
  await isTold(page, '“Wedding with singer” is entered.');
}

interface PlannedCall {
  readonly kind: string;
  readonly on: string;
  readonly from: string;
  readonly until: string;
}

async function writeCall(page: Page, number: number, call: PlannedCall): Promise<void> {
  const row = callRow(page, number);
  await row.getByLabel('Kind').selectOption(call.kind);
  await row.getByLabel('Day').fill(call.on);
  await row.getByLabel('From').fill(call.from);
  await row.getByLabel('Until').fill(call.until);
  await row.getByLabel('Place', { exact: false }).first().fill('St. Ida, Erlengrund');
}

async function condition(page: Page, number: number, only: string): Promise<void> {
  const row = callRow(page, number);
  await row.getByText('Name, condition, time zone').click();
  await row.getByLabel('Only if').fill(only);
}

function callRow(page: Page, number: number): Locator {
  return page
    .getByRole('listitem')
    .filter({ has: page.getByRole('button', { name: `Take out call ${number}` }) });
}

async function writeWork(page: Page, number: number, title: string): Promise<void> {
  await page.getByRole('button', { name: 'Add a work' }).click();
  const row = page
    .getByRole('listitem')
    .filter({ has: page.getByRole('button', { name: `Take out work ${number}` }) });
  await row.getByLabel('Title of the work').fill(title);
  await row.getByLabel('Asked for by the soloist').check();
}

async function quote(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Quote', exact: true }).click();
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByText('€210.00')).toBeVisible();
  await dialog.getByRole('button', { name: 'Quote it' }).click();
  await isTold(page, 'Quoted at €210.00.');
}

async function agree(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'They said yes' }).click();
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByLabel('Who said yes')).toHaveValue('Jonas Ostheim');
  await dialog.getByRole('button', { name: 'Freeze it so' }).click();
  await isTold(page, '“Wedding with singer” is agreed.');
}

async function playCalls(page: Page): Promise<void> {
  const calls = page.getByRole('region', { name: 'Calls' });
  await calls.getByRole('button', { name: /^Played: Rehearsal/ }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: '15 minutes later' }).click();
  await expect(dialog.getByLabel('Until')).toHaveValue('19:15');
  await dialog.getByRole('button', { name: 'It was played so' }).click();
  await isTold(page, /^Rehearsal, .* is played\.$/);
  await expect(calls.getByText('18:00–19:15 (planned 18:00–19:00)')).toBeVisible();
  await calls.getByRole('button', { name: /^Played: Service/ }).click();
  await dialog.getByRole('button', { name: 'It was played so' }).click();
  await isTold(page, /^Service, .* is played\.$/);
}

async function travel(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Add a journey' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Day').fill(PLAYED);
  await dialog.getByLabel('From').fill('Uferweg');
  await dialog.getByLabel('To', { exact: true }).fill('St. Ida');
  await dialog.getByLabel('Distance').fill('40');
  // The policy's case bills one round trip of 40 km as a whole.
  await dialog.getByLabel('And the same way back').uncheck();
  await dialog.getByRole('button', { name: 'Save' }).click();
  await isTold(page, 'The journey is kept.');
}

async function release(page: Page): Promise<void> {
  const calls = page.getByRole('region', { name: 'Calls' });
  await expect(calls.getByText('kept free, only if a second ceremony is held')).toBeVisible();
  const held = calls.getByRole('listitem').filter({ hasText: 'kept free' });
  await held.getByRole('button', { name: /^What else can be said of Service/ }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Release it' }).click();
  await page.getByRole('dialog').getByRole('button', { name: 'Release it' }).click();
  await isTold(page, /^Service, .* is released\.$/);
  await expect(calls.getByText('kept free')).toHaveCount(0);
}

async function openLines(page: Page): Promise<void> {
  const statement = page.getByRole('region', { name: 'Statement' });
  await expect(statement.getByText('€224.00')).toBeVisible();
  for (const { line, clause, arithmetic } of LINES) {
    const opened = statement.getByRole('listitem').filter({ hasText: line });
    await opened.getByText(line).first().click();
    await expect(opened.getByText(clause)).toBeVisible();
    await expect(opened.getByText(arithmetic)).toBeVisible();
  }
  await expect(statement.getByText('Entrance song; Song after the vows')).toBeVisible();
}

async function invoice(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Invoice Jonas Ostheim' }).first().click();
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByText('€224.00')).toBeVisible();
  await dialog.getByRole('button', { name: 'Issue it' }).click();
  await isTold(page, /^Invoice \S+ is issued: €224\.00 to Jonas Ostheim\.$/);
  await page.getByRole('region', { name: 'Invoices' }).getByRole('link', { name: /^\d/ }).first().click();
  const title = page.getByRole('heading', { level: 1, name: /^Invoice / });
  const number = (await title.textContent())?.replace('Invoice ', '');
  const link = page.getByRole('link', { name: 'Open the PDF' });
  const answer = await page.request.get((await link.getAttribute('href')) ?? '');
  expect(answer.headers()['content-type']).toBe('application/pdf');
  const text = await readPdf(await answer.body());
  for (const said of [`Invoice ${number}`, 'Jonas Ostheim', ...PRINTED]) {
    expect(text).toContain(said);
  }
}

async function bePaid(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Record a payment' }).click();
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByLabel('Amount received')).toHaveValue('224.00');
  await dialog.getByLabel('Reference').fill('Wedding');
  await dialog.getByRole('button', { name: 'Record it' }).click();
  await isTold(page, '€224.00 from Jonas Ostheim is recorded.');
  await page.getByRole('link', { name: 'Engagement', exact: true }).click();
  const steps = page.getByRole('list', { name: 'How far it has come' });
  await expect(steps.locator('[aria-current=step]')).toHaveText('Paid');
  await goTo(page, 'Engagements');
  await expect(page.getByRole('row', { name: 'Wedding with singer' })).toContainText('Settled');
}

async function lookAtSeason(page: Page): Promise<void> {
  await goTo(page, 'Season');
  await page.getByRole('button', { name: 'Name a season' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Name').fill('This season');
  await dialog.getByLabel('First day').fill(dayFromToday(-30));
  await dialog.getByLabel('Last day').fill(dayFromToday(60));
  await dialog.getByRole('button', { name: 'Name it' }).click();
  await expect(page.getByRole('heading', { name: 'This season' })).toBeVisible();
  // An hour and a quarter of rehearsal, an hour of service.
  await expect(
    page.getByText('In this season 2.25 hours are played, 0.00 agreed and 0.00 held. Nothing is owed.'),
  ).toBeVisible();
  const score = page.getByRole('region', { name: 'Score of the season' });
  await expect(score.getByRole('group', { name: /^St\. Ida, Erlengrund: 2 calls\./ })).toBeVisible();
  await expect(page.getByText('Nobody owes anything for this season.')).toBeVisible();
  await page.getByText('St. Ida, Erlengrund, 2 calls').click();
  const calls = page.getByRole('table', { name: 'St. Ida, Erlengrund' }).getByRole('row');
  await expect(calls.filter({ hasText: 'Rehearsal' })).toContainText('played');
  await expect(calls.filter({ hasText: 'Service' })).toContainText('played');
}
