// The masthead: whose paper it is, over a stave.

import { type Band, beside, tied } from './band.ts';
import { centred, type Desk } from './desk.ts';
import type { Manuscript } from './manuscript.ts';
import { type Box, part, type Rule } from './page.ts';
import { setLines } from './setting.ts';
import { STYLES } from './style.ts';

export function masthead(
  { masthead: { name, whereabouts } }: Manuscript,
  { faces, box, root }: Desk,
): Band[] {
  const across = centred(box);
  const who = setLines(name, STYLES.name, across, { faces, part: part('P', root) });
  const where = whereabouts
    ? setLines(whereabouts, STYLES.small, across, { faces, part: part('P', root) })
    : [];
  return [...tied(beside([who])), ...tied(beside([where], 3)), stave(box)];
}

const LINES = 5;
const SPACE = 2.6;
const WEIGHT = 0.3;

function stave({ left, right }: Box): Band {
  const rules = Array.from(
    { length: LINES },
    (_, line): Rule => ({ x: left, width: right - left, y: line * SPACE, weight: WEIGHT, ink: 'wire' }),
  );
  return { words: [], rules, height: (LINES - 1) * SPACE, before: 14, withNext: true };
}
