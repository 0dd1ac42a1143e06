// What the pieces of a page are set with.

import type { Faces } from './face.ts';
import type { Box, Part } from './page.ts';
import type { Measure } from './setting.ts';

export interface Desk {
  readonly faces: Faces;
  readonly box: Box;
  /** The document, to which each piece adds its parts. */
  readonly root: Part;
  /** The right edge that all figures of the document share. */
  readonly figures: number;
}

/** The whole width of the page, with words in its middle. */
export function centred({ left, right }: Box): Measure {
  return { x: left, width: right - left, align: 'centre' };
}

/** The two halves of the page, with a gutter between them. */
export function halves({ left, right }: Box): { left: Measure; right: Measure } {
  const width = (right - left - GUTTER) / 2;
  return { left: { x: left, width }, right: { x: right - width, width } };
}

const GUTTER = 28;
