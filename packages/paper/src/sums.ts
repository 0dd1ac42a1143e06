// The sums under the table, in the column of its amounts, closed by the thin and the thick line of a last bar.

import { type Band, beside, ruled, tied, together } from './band.ts';
import { type Desk, halves } from './desk.ts';
import type { Faces } from './face.ts';
import type { Manuscript, Sum } from './manuscript.ts';
import { type Box, type Part, part, type Rule } from './page.ts';
import { setLines, widthOf } from './setting.ts';
import { STYLES } from './style.ts';

const GAP = 16;
/** A label with less room than this beside its figure stands above it. */
const LABEL_ROOM = 48;

/** Where figures end: the margin, less the room for a currency's sign that follows them. */
export function figureEdge({ sums }: Manuscript, { right }: Box, faces: Faces): number {
  return right - Math.max(0, ...sums.map((sum) => widthOf(sum.mark ?? '', styleOf(sum), faces)));
}

export function sums({ sums, asides }: Manuscript, desk: Desk): Band[] {
  const { box, faces, root } = desk;
  const whole = part('Table', root);
  const rows = sums.flatMap((sum, index) => sumBands(sum, desk, { whole, first: index === 0 }));
  const small = asides.flatMap((aside) =>
    setLines(aside, STYLES.small, halves(box).right, { faces, part: part('P', root) }),
  );
  return together([ruled(box, { above: 8, below: 0 }), ...tied(rows), lastBar(box), ...beside([small], 7)]);
}

function styleOf({ great }: Sum) {
  return great ? STYLES.total : STYLES.text;
}

/** Sums stand in the right half of the page. A figure is never broken: a great one may reach into the left. */
function sumBands(sum: Sum, desk: Desk, { whole, first }: { whole: Part; first: boolean }): Band[] {
  const { faces, box, figures } = desk;
  const style = styleOf(sum);
  const { right } = halves(box);
  const room = figures - widthOf(sum.figure, style, faces) - GAP - right.x;
  const above = room < LABEL_ROOM;
  const row = part('TR', whole);
  const label = setLines(
    sum.label,
    sum.great ? STYLES.subject : STYLES.label,
    above ? right : { ...right, width: room },
    { faces, part: part('TH', row, 'Row') },
  );
  const within = { faces, part: part('TD', row) };
  const all = { x: box.left, align: 'right' } as const;
  const figure = setLines(sum.figure, style, { ...all, width: figures - box.left }, within);
  const mark = setLines(sum.mark ?? '', style, { ...all, width: box.right - box.left }, within);
  const before = first ? 6 : sum.great ? 3 : 0;
  return above
    ? [...beside([label], before), ...beside([figure, mark])]
    : beside([label, figure, mark], before);
}

function lastBar(box: Box): Band {
  const { x, width } = halves(box).right;
  const rule = (y: number, weight: number): Rule => ({ x, width, y, weight, ink: 'ebony' });
  return { words: [], rules: [rule(0.2, 0.4), rule(3, 1.8)], height: 4, before: 5, withNext: false };
}
