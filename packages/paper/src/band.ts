// Bands: strips of a page, as wide as it is, that are never cut. A document is a list of bands, from top to foot.

import type { Box, Marks, Placed, Rule } from './page.ts';
import type { SetLine } from './setting.ts';

/** Marks stand at heights counted from the band's top. */
export interface Band extends Marks {
  readonly height: number;
  /** The space above, which a band at the top of a page does without. */
  readonly before: number;
  /** True where the next band must stand on the same page, if any page can hold both. */
  readonly withNext: boolean;
  /** What is said again above where this band comes first on a page: the head of its table. */
  readonly again?: readonly Band[];
}

/** The distance from the top of a line to its baseline, as a share of its leading. */
const BASELINE = 0.72;
const THIN = 0.4;

/** Columns of lines side by side, line by line on one baseline. `before` is the space above the first. */
export function beside(columns: readonly (readonly SetLine[])[], before = 0): Band[] {
  const count = Math.max(0, ...columns.map((lines) => lines.length));
  return Array.from({ length: count }, (_, index) =>
    bandOf(
      columns.flatMap((lines) => lines[index] ?? []),
      index === 0 ? before : 0,
    ),
  );
}

function bandOf(lines: readonly SetLine[], before: number): Band {
  const height = Math.max(...lines.map(({ leading }) => leading));
  const y = Math.max(...lines.map(({ leading }) => leading * BASELINE));
  const words: Placed[] = lines.flatMap(({ words }) => (words ? [{ ...words, y }] : []));
  return { words, rules: [], height, before, withNext: false };
}

/** A thin rule across the page, tied to what follows, with space above and below it. */
export function ruled({ left, right }: Box, space: { above: number; below: number }): Band {
  const rule: Rule = { x: left, width: right - left, y: THIN / 2, weight: THIN, ink: 'wire' };
  return { words: [], rules: [rule], height: THIN + space.below, before: space.above, withNext: true };
}

/** The bands, so that no page ends between them. */
export function together(bands: readonly Band[]): Band[] {
  return bands.map((band, index) => (index < bands.length - 1 ? { ...band, withNext: true } : band));
}

/** The bands, all of them tied to what follows. */
export function tied(bands: readonly Band[]): Band[] {
  return bands.map((band) => ({ ...band, withNext: true }));
}
