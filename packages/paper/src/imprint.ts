// The imprint: what stands at the foot of the last page, as a publisher's does on a title page.

import { type Band, beside, ruled, together } from './band.ts';
import { type Desk, halves } from './desk.ts';
import type { Manuscript } from './manuscript.ts';
import { passage } from './parties.ts';

const SPACE_ABOVE = 36;
const BETWEEN = 10;
/** A note is set no wider than is read with ease. */
const NOTE_WIDTH = 0.78;
/** An imprint of more lines than this is a text of its own, and may be parted by the end of a page. */
const KEPT_WHOLE = 24;

export function imprint({ imprint, note }: Manuscript, desk: Desk): Band[] {
  const { box } = desk;
  const { left, right } = halves(box);
  const [first, second] = imprint;
  const sides = beside(
    [first ? passage(first, left, desk) : [], second ? passage(second, right, desk) : []],
    BETWEEN,
  );
  const below = note
    ? beside([passage(note, { x: box.left, width: (box.right - box.left) * NOTE_WIDTH }, desk)], BETWEEN)
    : [];
  const bands = [...sides, ...below];
  if (bands.length === 0) return [];
  const rule = ruled(box, { above: SPACE_ABOVE, below: 0 });
  return bands.length <= KEPT_WHOLE ? together([rule, ...bands]) : [rule, ...bands];
}
