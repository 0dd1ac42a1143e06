// Casting off: flowing bands into pages, a little closer where that saves a page.

import type { Band } from './band.ts';
import type { Box, Marks, Placed, Rule } from './page.ts';

/** One page being filled: `y` is how far down it is filled. */
interface Filling {
  readonly words: Placed[];
  readonly rules: Rule[];
  y: number;
}

/** How close bands may stand, as shares of the space between them that is best to look at. */
const CLOSER = [0.8, 0.6];

/** The pages with the space between bands that looks best, or closer where so fewer pages are enough. */
export function castOff(bands: readonly Band[], last: readonly Band[], box: Box): Marks[] {
  const wide = flow(bands, last, box);
  if (wide.length === 1) return wide;
  for (const share of CLOSER) {
    const close = flow(closer(bands, share), closer(last, share), box);
    if (close.length < wide.length) return close;
  }
  return wide;
}

function closer(bands: readonly Band[], share: number): Band[] {
  return bands.map((band) => ({
    ...band,
    before: band.before * share,
    ...(band.again ? { again: closer(band.again, share) } : {}),
  }));
}

/**
 * Fills pages from the top. Bands that stay together move to the next page together; a run of them that no page
 * can hold is parted where the page ends. `last` bands stand at the foot of the last page; where there is no room
 * for them, what ends the bands before moves along, so that they never have a page to themselves.
 */
export function flow(bands: readonly Band[], last: readonly Band[], box: Box): Marks[] {
  const pages = [emptyPage(box)];
  let page = pages[0] ?? emptyPage(box);
  const turn = (to: Band | undefined) => {
    page = emptyPage(box);
    pages.push(page);
    for (const band of to?.again ?? []) put(band, page, box);
  };
  const fill = (run: readonly Band[]) => {
    for (const band of run) {
      if (!fits([band], page, box)) turn(band);
      put(band, page, box);
    }
  };
  const runs = runsOf(bands);
  const ending = runs.pop() ?? [];
  const closing = runsOf(last).length === 1 ? [...ending, ...last] : ending;
  for (const run of runs) {
    if (!fits(run, page, box)) turn(run[0]);
    fill(run);
  }
  if (!fits(closing, page, box)) turn(ending[0]);
  fill(ending);
  if (fits(last, page, box)) page.y = Math.max(page.y, box.bottom - heightOf(last));
  fill(last);
  return pages;
}

function emptyPage(box: Box): Filling {
  return { words: [], rules: [], y: box.top };
}

/** Bands that stay together, as one run each. */
function runsOf(bands: readonly Band[]): Band[][] {
  const runs: Band[][] = [];
  let run: Band[] = [];
  for (const band of bands) {
    run.push(band);
    if (band.withNext) continue;
    runs.push(run);
    run = [];
  }
  return run.length > 0 ? [...runs, run] : runs;
}

/** An empty page takes anything: there is no emptier one. */
function fits(run: readonly Band[], page: Filling, box: Box): boolean {
  return page.y === box.top || page.y + heightOf(run) <= box.bottom;
}

function heightOf(run: readonly Band[]): number {
  return run.reduce((sum, { before, height }) => sum + before + height, 0);
}

function put(band: Band, page: Filling, box: Box): void {
  const top = page.y === box.top ? page.y : page.y + band.before;
  for (const word of band.words) page.words.push({ ...word, y: top + word.y });
  for (const rule of band.rules) page.rules.push({ ...rule, y: top + rule.y });
  page.y = top + band.height;
}
