// An engagement already agreed, put into the book over the wire: for a journey that begins after the yes.

import type { Page } from '@playwright/test';
import { dayFromToday } from './days.ts';
import { expect } from './pianist.ts';

/** A rehearsal of yesterday that nothing is said of yet, at 45.00 an hour. Gives the engagement's title. */
export async function agreeRehearsal(page: Page): Promise<string> {
  const title = 'Between two halls';
  const tariff = await send(page, 'tariffs', {
    name: 'By the hour',
    currency: 'EUR',
    from: '2026-01-01',
    clauses: [{ id: 'hours', kind: 'hourly', terms: { price: '45.00' } }],
  });
  const payer = await send(page, 'parties', { name: 'Solveig Arendt' });
  const planned = { on: dayFromToday(-1), from: '10:00', until: '11:00', zone: 'Europe/Berlin' };
  const engagement = await send(page, 'engagements', {
    title,
    soloistParty: payer.id,
    payers: { payer: payer.id },
    calls: [{ kind: 'rehearsal', place: 'Small hall', planned }],
  });
  const validUntil = dayFromToday(14);
  await send(page, `engagements/${engagement.id}/quote`, { tariff: tariff.id, version: 1, validUntil });
  await send(page, `engagements/${engagement.id}/agree`, { acceptedBy: 'Solveig Arendt' });
  await send(page, 'seasons', { name: 'This season', from: dayFromToday(-20), to: dayFromToday(40) });
  return title;
}

async function send(page: Page, path: string, data: object): Promise<{ readonly id: string }> {
  const answer = await page.request.post(`/api/${path}`, { data });
  expect([path, answer.ok(), answer.ok() || (await answer.text())]).toEqual([path, true, true]);
  return answer.json();
}
