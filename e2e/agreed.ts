// Engagements put into the book over the wire: for a journey that begins after the inquiry, or after the yes.

import type { Page } from '@playwright/test';
import { dayFromToday } from './days.ts';
import { expect } from './pianist.ts';

/** A rehearsal of yesterday that nothing is said of yet, at 45.00 an hour. Gives the engagement's title. */
export async function agreeRehearsal(page: Page): Promise<string> {
  const title = 'Between two halls';
  const tariff = await keep(page, 'tariffs', {
    name: 'By the hour',
    currency: 'EUR',
    from: '2026-01-01',
    clauses: [{ id: 'hours', kind: 'hourly', terms: { price: '45.00' } }],
  });
  const calls = [{ kind: 'rehearsal', on: dayFromToday(-1), from: '10:00', until: '11:00' }];
  const engagement = await askFor(page, { title, soloist: 'Solveig Arendt', calls });
  const validUntil = dayFromToday(14);
  await keep(page, `engagements/${engagement.id}/quote`, { tariff: tariff.id, version: 1, validUntil });
  await keep(page, `engagements/${engagement.id}/agree`, { acceptedBy: 'Solveig Arendt' });
  await keep(page, 'seasons', { name: 'This season', from: dayFromToday(-20), to: dayFromToday(40) });
  return title;
}

interface Inquiry {
  readonly title: string;
  readonly soloist: string;
  /** Each in the small hall, by the clock of Berlin. */
  readonly calls: readonly {
    readonly kind: string;
    readonly on: string;
    readonly from: string;
    readonly until: string;
  }[];
}

/** An inquiry of a soloist who pays. */
export async function askFor(page: Page, inquiry: Inquiry): Promise<{ readonly id: string }> {
  const { title, soloist, calls } = inquiry;
  const party = await keep(page, 'parties', { name: soloist });
  return keep(page, 'engagements', {
    title,
    soloistParty: party.id,
    payers: { payer: party.id },
    calls: calls.map(({ kind, ...times }) => ({
      kind,
      place: 'Small hall',
      planned: { ...times, zone: 'Europe/Berlin' },
    })),
  });
}

/** Puts one thing into the book, as the program itself does. */
export async function keep(page: Page, path: string, data: object): Promise<{ readonly id: string }> {
  const answer = await page.request.post(`/api/${path}`, { data });
  expect([path, answer.ok(), answer.ok() || (await answer.text())]).toEqual([path, true, true]);
  return answer.json();
}
