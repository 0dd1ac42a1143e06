// The faces of the house: Source Serif 4 and Old Standard TT (both under the SIL Open Font License 1.1), read
// from their packages once and shared by all documents: to read one again costs more than the document.

import { readFile } from 'node:fs/promises';
import { createRequire as requireFrom } from 'node:module';
import type { Font } from 'fontkit';
import { FACE_NAMES, type Face, type FaceName, type Faces } from './face.ts';

const FILES: Record<FaceName, string> = {
  text: '@expo-google-fonts/source-serif-4/400Regular/SourceSerif4_400Regular.ttf',
  italic: '@expo-google-fonts/source-serif-4/400Regular_Italic/SourceSerif4_400Regular_Italic.ttf',
  display: '@expo-google-fonts/old-standard-tt/OldStandardTT_400Regular.ttf',
};

/** The parsed fonts, to draw with, and the same as faces, to lay out with. */
export interface Fonts {
  readonly parsed: Readonly<Record<FaceName, Font>>;
  readonly faces: Faces;
}

let loaded: Promise<Fonts> | undefined;

/** The fonts, read at the first call. */
export function fonts(): Promise<Fonts> {
  loaded ??= load();
  return loaded;
}

async function load(): Promise<Fonts> {
  const [text, italic, display] = await Promise.all(FACE_NAMES.map(parse));
  if (!text || !italic || !display) throw new Error('a font of the house is missing');
  return {
    parsed: { text, italic, display },
    faces: { text: faceOf(text), italic: faceOf(italic), display: faceOf(display) },
  };
}

async function parse(name: FaceName): Promise<Font> {
  const { create } = await import('fontkit');
  const font = create(await readFile(requireFrom(import.meta.url).resolve(FILES[name])));
  if ('fonts' in font) throw new Error(`${FILES[name]} holds several fonts`);
  // pdfkit scales the runs that it is given to thousandths, in place: harmless only where they are that already.
  if (font.unitsPerEm !== 1000) throw new Error(`${FILES[name]} is not drawn in thousandths`);
  nameGlyphs(font);
  rememberRuns(font);
  return font;
}

/**
 * Says for each glyph which letter it stands for. fontkit believes whoever asks first, and several letters may
 * share a glyph, so that without this a document's bytes would depend on the documents before it. The apostrophe
 * is to be found as one, not as the modifier letter of its shape; joined letters (U+FB00 to U+FB06) are left to
 * the words they join, so that `fi` is found as `f` and `i`.
 */
function nameGlyphs(font: Font): void {
  const letters = font.characterSet.filter((letter) => letter < 0xfb00 || letter > 0xfb06);
  const usual = letters.filter((letter) => !isSeldom(letter));
  for (const letter of [...usual, ...letters]) font.glyphForCodePoint(letter);
}

/** Spacing modifier letters, and what Unicode has only for compatibility. */
function isSeldom(letter: number): boolean {
  const text = String.fromCodePoint(letter);
  return (letter >= 0x02b0 && letter <= 0x02ff) || text.normalize('NFKC') !== text;
}

/** Shapes a word once for all documents; whatever is not a plain run is shaped as it comes. */
function rememberRuns(font: Font): void {
  const shape = font.layout.bind(font);
  const plain = remembered((text: string) => shape(text));
  font.layout = (text, ...how) =>
    how.every((option) => option === undefined) ? plain(text) : shape(text, ...how);
}

function faceOf(font: Font): Face {
  return {
    widthOf: remembered((text) =>
      words(text).reduce((width, word) => width + font.layout(word).advanceWidth, 0),
    ),
    holds: remembered((text) =>
      [...text].every((letter) => font.hasGlyphForCodePoint(letter.codePointAt(0) ?? 0)),
    ),
  };
}

const REMEMBERED = 8_192;
const LONGEST = 96;

/** The same answers, found once each: of texts that are not long, and only so many. */
function remembered<Found>(find: (text: string) => Found): (text: string) => Found {
  const known = new Map<string, Found>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const found = find(text);
    if (known.size >= REMEMBERED) known.clear();
    if (text.length <= LONGEST) known.set(text, found);
    return found;
  };
}

/** Words with the space after each, as pdfkit shapes them, so that what is measured is what is drawn. */
function words(text: string): string[] {
  return text.match(/[^ ]* |[^ ]+/g) ?? [];
}
