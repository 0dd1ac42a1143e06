// Who the document is for, and beside it the few facts that offices file it by.

import { type Band, beside } from './band.ts';
import { type Desk, halves } from './desk.ts';
import type { Manuscript, Passage } from './manuscript.ts';
import { part } from './page.ts';
import { type Measure, type SetLine, setLines, widthOf } from './setting.ts';
import { STYLES } from './style.ts';

const SPACE_ABOVE = 28;
const AFTER_LABEL = 14;

export function parties({ to, facts }: Manuscript, desk: Desk): Band[] {
  const { left, right } = halves(desk.box);
  return beside([passage(to, left, desk), ...factColumns(facts, right, desk)], SPACE_ABOVE);
}

/** A label, and its lines below it as one paragraph each. */
export function passage({ label, lines }: Passage, measure: Measure, { faces, root }: Desk): SetLine[] {
  return [
    ...setLines(label, STYLES.label, measure, { faces, part: part('H2', root) }),
    ...lines.flatMap((line) => setLines(line, STYLES.text, measure, { faces, part: part('P', root) })),
  ];
}

/** Labels in one column, what they say in the next; a long saying pushes the next label down. */
function factColumns(
  facts: Manuscript['facts'],
  { x, width }: Measure,
  { faces, root }: Desk,
): [SetLine[], SetLine[]] {
  const widest = Math.max(0, ...facts.map(({ label }) => widthOf(label, STYLES.label, faces)));
  const labels = Math.min(width / 2, widest + AFTER_LABEL);
  const columns: [SetLine[], SetLine[]] = [[], []];
  for (const { label, text } of facts) {
    const within = { faces, part: part('P', root) };
    columns[0].push(...setLines(label, STYLES.label, { x, width: labels }, within));
    columns[1].push(...setLines(text, STYLES.text, { x: x + labels, width: width - labels }, within));
    level(columns);
  }
  return columns;
}

/** Fills the shorter column with gaps, so that both go on from the same height. */
function level(columns: readonly SetLine[][]): void {
  const longest = Math.max(...columns.map((column) => column.length));
  for (const column of columns) {
    while (column.length < longest) column.push({ leading: STYLES.text.leading });
  }
}
