// The built dashboard in a Chromium, its books answered from a dealt season of many calls: no server, no database.
import { readFile } from 'node:fs/promises';
import { extname, join } from 'node:path';
import { Temporal } from '@colla/calendar';
import { manyCalls } from '@colla/example';
import { seasonScore } from '@colla/invoicing';
import { showOrganisation, showSeason, showSeasonScore } from '@colla/wire';
import { type Browser, chromium, type Page, type Route } from '@playwright/test';
import { findChromium } from './chromium.mjs';
import { root } from './root.mjs';

/** A name that no machine answers to: every request is answered here. */
const ADDRESS = 'http://dashboard.example';

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html',
  '.js': 'text/javascript',
  '.css': 'text/css',
  '.svg': 'image/svg+xml',
  '.woff2': 'font/woff2',
};

export interface SeasonPage {
  readonly page: Page;
  /** Bytes of what the page has loaded of itself so far, by the end of the file's name. */
  readonly loaded: ReadonlyMap<string, Buffer>;
  readonly end: () => Promise<void>;
}

export async function openSeason({ calls }: { calls: number }): Promise<SeasonPage> {
  const browser = await launched();
  const page = await browser.newPage({ viewport: { width: 1280, height: 900 } });
  const loaded = new Map<string, Buffer>();
  const answers = answersFor(calls);
  await page.route('**/*', (route) => answered(route, answers, loaded));
  await page.goto(ADDRESS);
  await page.locator('.score-hours canvas[width]').waitFor();
  await page.evaluate('document.fonts.ready.then(() => undefined)');
  return { page, loaded, end: () => browser.close() };
}

function launched(): Promise<Browser> {
  const executablePath = findChromium();
  if (!executablePath) throw new Error('There is no Chromium on this machine; `npm test` brings one.');
  return chromium.launch({
    executablePath,
    args: [
      '--no-sandbox',
      '--disable-gpu',
      '--disable-quic',
      '--no-first-run',
      '--disable-background-networking',
    ],
  });
}

async function answered(route: Route, answers: Answers, loaded: Map<string, Buffer>): Promise<void> {
  const { pathname } = new URL(route.request().url());
  const told = answers.get(pathname);
  if (told !== undefined) return route.fulfill({ json: told });
  const name = extname(pathname) === '' ? '/index.html' : pathname;
  const body = await readFile(join(root, 'apps', 'dashboard', 'dist', name));
  loaded.set(name, body);
  return route.fulfill({ body, contentType: TYPES[extname(name)] ?? 'application/octet-stream' });
}

type Answers = ReadonlyMap<string, unknown>;

function answersFor(calls: number): Answers {
  let given = 0;
  const newId = () => `0198b1c2-0000-7000-8000-${String(++given).padStart(12, '0')}`;
  const now = Temporal.Now.zonedDateTimeISO('Europe/London');
  const { organisation, parties, season, engagements } = manyCalls({ newId, now, seed: 1, calls });
  const names = new Map(parties.map(({ id, name }) => [id, name]));
  const house = { id: newId(), ...organisation };
  const { weeklyLimit } = house;
  const facts = { season, engagements, invoices: [], paid: new Map(), names, house, weeklyLimit };
  return new Map<string, unknown>([
    ['/api/organisation', showOrganisation(house)],
    ['/api/seasons', { items: [showSeason(season)] }],
    [`/api/seasons/${season.id}/score`, showSeasonScore(seasonScore(facts, now))],
  ]);
}
