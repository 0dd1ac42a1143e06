/// <reference lib="dom" />
// The season of 2,000 calls while what is shown of it changes: from the click until the frame with the new score is
// painted. 100 milliseconds are six frames of a screen that shows sixty a second.
import type { Row } from '../measure.ts';
import { openSeason } from '../season-page.ts';

const FRAME = 1000 / 60;
const LONGEST_TASK = 200;

const season = await openSeason({ calls: 2000 });
const { page } = season;
// A standing that is chosen again shows all 2,000 again.
const choices = ['played', 'agreed', 'agreed', 'cancelled', 'played', 'played'];
let turn = 0;

await page.evaluate(watch);

const row: Row = {
  id: 'web-2',
  ours: 'season of 2,000 calls, click to paint when the filter changes',
  reference: 'one frame',
  goal: { atMost: 100 / FRAME },
  rounds: 12,
  run: async () => {
    const choice = choices[turn % choices.length] ?? 'played';
    turn += 1;
    await page.getByRole('button', { name: choice, exact: true }).click();
    const { paint, longest } = await page.evaluate(() => window.lastChange);
    if (longest > LONGEST_TASK) throw new Error(`one task took ${longest} ms, more than ${LONGEST_TASK}`);
    return { ours: paint, reference: FRAME };
  },
  end: season.end,
};

export default row;

declare global {
  interface Window {
    /** Milliseconds of the last change of the filter, and of the longest task since the page was watched. */
    lastChange: Promise<{ paint: number; longest: number }>;
  }
}

/** Runs in the page. A message that is posted in a frame's callback is heard after that frame is painted. */
function watch(): void {
  let longest = 0;
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) longest = Math.max(longest, duration);
  }).observe({ type: 'longtask' });
  addEventListener(
    'click',
    ({ timeStamp }) => {
      window.lastChange = new Promise((resolve) => {
        requestAnimationFrame(() => {
          const { port1, port2 } = new MessageChannel();
          port1.onmessage = () => resolve({ paint: performance.now() - timeStamp, longest });
          port2.postMessage('painted');
        });
      });
    },
    { capture: true },
  );
}
