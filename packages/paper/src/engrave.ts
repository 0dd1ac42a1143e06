// From manuscript to laid-out pages: masthead, heading, parties, table, sums, reasons, imprint, in the order they are read.

import { type Band, beside, together } from './band.ts';
import { centred, type Desk } from './desk.ts';
import type { Faces } from './face.ts';
import { castOff } from './flow.ts';
import { imprint } from './imprint.ts';
import type { Manuscript } from './manuscript.ts';
import { masthead } from './masthead.ts';
import { boxOf, type Layout, type Marks, type Paper, part } from './page.ts';
import { parties } from './parties.ts';
import { reasons } from './reasons.ts';
import { setLines } from './setting.ts';
import { STYLES } from './style.ts';
import { figureEdge, sums } from './sums.ts';
import { table } from './table.ts';

/** Lays a manuscript out on paper. Pure: the same words on the same paper come to the same places. */
export function engrave(manuscript: Manuscript, { paper, faces }: { paper: Paper; faces: Faces }): Layout {
  const box = boxOf(paper);
  const desk: Desk = { faces, box, root: part('Document'), figures: figureEdge(manuscript, box, faces) };
  const pages = footed(paged(manuscript, desk), manuscript, desk);
  const { title, language, madeOn } = manuscript;
  return { title, language, madeOn, paper, root: desk.root, pages };
}

/**
 * The reasons stand below the sums where there is room for them. Where they would part the sums from how to pay, they
 * have a page of their own at the end, and what is asked for stays whole.
 */
function paged(manuscript: Manuscript, desk: Desk): Marks[] {
  const { box, root } = desk;
  const asked = [
    ...masthead(manuscript, desk),
    ...heading(manuscript, desk),
    ...parties(manuscript, desk),
    ...table(manuscript, desk),
    ...sums(manuscript, desk),
  ];
  const [why, last] = [part('Document'), part('Document')];
  const reasonBands = reasons(manuscript, { ...desk, root: why });
  const lastBands = imprint(manuscript, { ...desk, root: last });
  const alone = castOff(asked, lastBands, box);
  const together = reasonBands.length === 0 ? alone : castOff([...asked, ...reasonBands], lastBands, box);
  const fits = together.length === alone.length;
  root.parts.push(...(fits ? [why, last] : [last, why]).flatMap(({ parts }) => parts));
  return fits ? together : [...alone, ...castOff(reasonBands, [], box)];
}

function heading({ heading, subject }: Manuscript, { faces, box, root }: Desk): Band[] {
  const across = centred(box);
  const head = setLines(heading, STYLES.heading, across, { faces, part: part('H1', root) });
  const below = setLines(subject, STYLES.subject, across, { faces, part: part('P', root) });
  return [...together(beside([head], 30)), ...beside([below], 2)];
}

/** Several pages say on each which they are, and of what. */
function footed(pages: readonly Marks[], { foot }: Manuscript, { faces, box }: Desk): Marks[] {
  if (pages.length === 1) return [...pages];
  return pages.map((page, index) => {
    const lines = setLines(foot(index + 1, pages.length), STYLES.aside, centred(box), { faces });
    return {
      ...page,
      words: [...page.words, ...lines.flatMap(({ words }) => (words ? [{ ...words, y: box.foot }] : []))],
    };
  });
}
