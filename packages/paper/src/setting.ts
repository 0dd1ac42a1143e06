// Setting words into a measure: broken into lines between words, and within one only where it must be.

import type { Face, Faces } from './face.ts';
import { legible, lettersOf } from './legible.ts';
import type { Part, Placed } from './page.ts';
import type { Style } from './style.ts';

/** Where words go: from `x` on, `width` wide, and against which side. */
export interface Measure {
  readonly x: number;
  readonly width: number;
  readonly align?: 'left' | 'right' | 'centre';
}

/** One line of set words, at its place across the page; its height is not decided yet. Without words, a gap. */
export interface SetLine {
  readonly words?: Omit<Placed, 'y'>;
  readonly leading: number;
}

/** Sets the text as lines. Empty text gives no line. */
export function setLines(
  text: string,
  style: Style,
  measure: Measure,
  { faces, part }: { faces: Faces; part?: Part },
): SetLine[] {
  const plain = legible(text, faces).trim();
  const face = fitting(style, plain, faces);
  return broken(plain, measure.width, (words) => width(words, style.size, faces[face])).map((line) => {
    const wide = width(line, style.size, faces[face]);
    const words = {
      text: line,
      x: startOf(wide, measure),
      width: wide,
      face,
      size: style.size,
      ink: style.ink,
    };
    return { words: part ? { ...words, part } : words, leading: style.leading };
  });
}

/** How wide the text comes out on one line. */
export function widthOf(text: string, style: Style, faces: Faces): number {
  const plain = legible(text, faces);
  return width(plain, style.size, faces[fitting(style, plain, faces)]);
}

/** Words that the display face cannot spell are set in the text face. */
function fitting({ face }: Style, text: string, faces: Faces): Style['face'] {
  return faces[face].holds(text) ? face : 'text';
}

function width(text: string, size: number, face: Face): number {
  return (face.widthOf(text) * size) / 1000;
}

function startOf(wide: number, { x, width, align }: Measure): number {
  if (align === 'right') return x + width - wide;
  return align === 'centre' ? x + (width - wide) / 2 : x;
}

type Wide = (text: string) => number;

/** As many words a line as fit. A break may come at a space, and after a hyphen, dash or slash. */
function broken(text: string, width: number, wide: Wide): string[] {
  if (text === '') return [];
  if (wide(text) <= width) return [text];
  const lines: string[] = [];
  let line = '';
  for (const piece of text.match(/[^ \-–—/]*[-–—/]+|[^ \-–—/]+ ?| /g) ?? []) {
    if (wide((line + piece).trimEnd()) <= width) {
      line += piece;
      continue;
    }
    if (line.trim() !== '') lines.push(line.trimEnd());
    const parts = cut(piece, width, wide);
    line = parts.pop() ?? '';
    lines.push(...parts);
  }
  return line.trim() === '' ? lines : [...lines, line.trimEnd()];
}

/** A word wider than the measure, in pieces that fit, letter by letter; at least one letter each. */
function cut(word: string, width: number, wide: Wide): string[] {
  if (wide(word.trimEnd()) <= width) return [word.trimStart()];
  const pieces: string[] = [];
  let piece = '';
  let filled = 0;
  for (const letter of lettersOf(word)) {
    const more = wide(letter);
    if (piece !== '' && filled + more > width) {
      pieces.push(piece);
      piece = '';
      filled = 0;
    }
    piece += letter;
    filled += more;
  }
  return [...pieces, piece];
}
