// A page as it is laid out, before it is drawn: words and rules at their places, in points from the top left.

import type { Temporal } from '@colla/calendar';
import type { FaceName } from './face.ts';
import type { Ink } from './style.ts';

/** What a piece of the document is, for who has it read aloud: the names of ISO 32000. */
export type Role = 'Document' | 'H1' | 'H2' | 'P' | 'Table' | 'TR' | 'TH' | 'TD';

/** One piece of the document in reading order; `scope` says what a head of a table is the head of. */
export interface Part {
  readonly role: Role;
  readonly scope?: 'Column' | 'Row';
  readonly parts: Part[];
}

/** A part that is read after those `within` has already. */
export function part(role: Role, within?: Part, scope?: 'Column' | 'Row'): Part {
  const made: Part = { role, ...(scope ? { scope } : {}), parts: [] };
  within?.parts.push(made);
  return made;
}

/** Words on one baseline. Without a part they are for the eye only: a running foot, a head said again. */
export interface Placed {
  readonly text: string;
  readonly x: number;
  /** The baseline. */
  readonly y: number;
  readonly width: number;
  readonly face: FaceName;
  readonly size: number;
  readonly ink: Ink;
  readonly part?: Part;
}

/** A level line, `weight` points thick, with its middle at `y`. */
export interface Rule {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly weight: number;
  readonly ink: Ink;
}

/** Placed words and rules. */
export interface Marks {
  readonly words: readonly Placed[];
  readonly rules: readonly Rule[];
}

/** A whole document, ready to print. `language` is a BCP 47 tag. */
export interface Layout {
  readonly title: string;
  readonly language: string;
  readonly madeOn: Temporal.PlainDate;
  readonly paper: Paper;
  readonly root: Part;
  readonly pages: readonly Marks[];
}

/** The papers people have: ISO 216 A4, and Letter of ANSI/ASME Y14.1, in points. */
export const PAPERS = {
  A4: { width: 595.28, height: 841.89 },
  Letter: { width: 612, height: 792 },
} as const;
export type Paper = keyof typeof PAPERS;

/** What may be written on: the paper less its margins. `foot` is the baseline of the running foot. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  readonly foot: number;
}

const SIDE = 62;
const TOP = 58;
const BOTTOM = 74;

export function boxOf(paper: Paper): Box {
  const { width, height } = PAPERS[paper];
  return {
    left: SIDE,
    right: width - SIDE,
    top: TOP,
    bottom: height - BOTTOM,
    foot: height - BOTTOM / 2 - 6,
  };
}
