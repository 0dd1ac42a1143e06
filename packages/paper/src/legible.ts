// Words as they can be printed: what no face holds is shown as missing, what has no shape is left out.

import type { Faces } from './face.ts';

const MISSING = '\ufffd';
/** The space at which no line ends. Its narrow sister is not in every face. */
const FIXED = '\u00a0';
/** Most words are of letters that every face holds, with one space between them. */
const PLAIN = /^(?:[!-~]+ )*[!-~]*$/;

/**
 * The text with spaces for line ends, without control and direction marks, and with U+FFFD for each letter that
 * the text face does not hold: a reader sees that something stood there. Joined letters are taken apart, wide
 * ones made narrow.
 */
export function legible(text: string, faces: Faces): string {
  if (PLAIN.test(text)) return text;
  const plain = text
    .normalize('NFC')
    .replace(/[\ufb00-\ufb06\uff01-\uff5e\uffe0-\uffe6]/g, (form) => form.normalize('NFKC'))
    .replace(/[\u00a0\u202f]/g, FIXED)
    .replace(/(?!\u00a0)\s+/g, ' ')
    .replace(/[\p{Cc}\p{Cf}]/gu, '');
  return faces.text.holds(plain) ? plain : withMissing(plain, faces);
}

/** Whether the text face holds all of the text. */
export function spells(text: string, faces: Faces): boolean {
  return !legible(text, faces).includes(MISSING);
}

const letters = new Intl.Segmenter('en', { granularity: 'grapheme' });

function withMissing(text: string, faces: Faces): string {
  return lettersOf(text)
    .map((letter) => (faces.text.holds(letter) ? letter : MISSING))
    .join('');
}

/** The letters as a reader counts them, each with its accents. */
export function lettersOf(text: string): string[] {
  return Array.from(letters.segment(text), ({ segment }) => segment);
}
