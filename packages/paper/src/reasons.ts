// How the amounts came about, in small type: each sentence of the terms in italics, and below it what was worked out.

import { type Band, beside, tied, together } from './band.ts';
import type { Desk } from './desk.ts';
import type { Manuscript } from './manuscript.ts';
import { part } from './page.ts';
import { type Measure, setLines } from './setting.ts';
import { STYLES } from './style.ts';

const SPACE_ABOVE = 22;
const BETWEEN = 5;
/** Small type is set no wider than is read with ease. */
const WIDTH = 0.86;
/** What was worked out stands in a little from its sentence. */
const INDENT = 10;
/** A sentence with more below it than this may be parted from its end by the end of a page. */
const KEPT_WHOLE = 10;

export function reasons({ why }: Manuscript, { faces, box, root }: Desk): Band[] {
  if (!why) return [];
  const measure: Measure = { x: box.left, width: (box.right - box.left) * WIDTH };
  const inner: Measure = { x: measure.x + INDENT, width: measure.width - INDENT };
  const label = setLines(why.label, STYLES.label, measure, { faces, part: part('H2', root) });
  const bands = why.of.flatMap(({ sentence = '', worked }, at) => {
    const said = setLines(sentence, STYLES.aside, measure, { faces, part: part('P', root) });
    const lines = worked.flatMap((one) =>
      setLines(one, STYLES.small, inner, { faces, part: part('P', root) }),
    );
    const all = beside([[...said, ...lines]], at === 0 ? 2 : BETWEEN);
    return all.length <= KEPT_WHOLE ? together(all) : all;
  });
  return [...tied(beside([label], SPACE_ABOVE)), ...bands];
}
