import { expect, test } from 'vitest';
import type { Face, Faces } from './face.ts';
import { setLines } from './setting.ts';
import { STYLES } from './style.ts';

// A face whose every letter is as wide as it is high, so that widths can be counted; it holds Latin letters only.
const square: Face = {
  widthOf: (text) => text.length * 1000,
  holds: (text) => /^[\u0020-\u024f\u2212\ufffd]*$/.test(text),
};
const faces: Faces = { text: square, italic: square, display: square };
const style = { ...STYLES.text, size: 10 };

const lines = (text: string, width: number) =>
  setLines(text, style, { x: 0, width }, { faces }).map(({ words }) => words?.text);

test.each([
  ['words that fit stay on one line', 'to be played', 120, ['to be played']],
  ['a line ends between words', 'to be played', 110, ['to be', 'played']],
  ['a line may end after a hyphen', 'four-hand duet', 60, ['four-', 'hand', 'duet']],
  ['a line may end after a slash', 'oboe/cello', 50, ['oboe/', 'cello']],
  ['a word wider than the line is cut', 'Konservatorium', 50, ['Konse', 'rvato', 'rium']],
  ['what follows a cut word goes on beside its end', 'Konservatorium B', 60, ['Konser', 'vatori', 'um B']],
  ['at least a letter stands on a line, however narrow', 'abc', 1, ['a', 'b', 'c']],
  ['no words give no line', '  ', 50, []],
])('%s', (_, text, width, expected) => {
  expect(lines(text, width)).toEqual(expected);
});

test('words against the right end where the measure ends', () => {
  const [line] = setLines('12.50', style, { x: 100, width: 80, align: 'right' }, { faces });
  expect(line?.words).toMatchObject({ x: 130, width: 50 });
});

test('words in the middle leave the same space on both sides', () => {
  const [line] = setLines('solo', style, { x: 100, width: 80, align: 'centre' }, { faces });
  expect(line?.words).toMatchObject({ x: 120, width: 40 });
});

test('words that the display face cannot spell are set in the text face', () => {
  const narrow: Faces = { ...faces, display: { ...square, holds: () => false } };
  const [line] = setLines('Łódź', { ...style, face: 'display' }, { x: 0, width: 100 }, { faces: narrow });
  expect(line?.words?.face).toBe('text');
});
