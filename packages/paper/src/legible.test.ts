import { expect, test } from 'vitest';
import { fonts } from './fonts.ts';
import { legible, spells } from './legible.ts';

const { faces } = await fonts();

test.each([
  ['names of many languages pass as they are', 'Żółkiewska, Dvořák, Şişli, Ørsted, Ελένη, Ольга'],
  ['signs of music and money pass as they are', '€ £ ¥ ₺ ₹ − × ½ № §'],
])('%s', (_, text) => {
  expect(legible(text, faces)).toBe(text);
});

test.each([
  ['a letter with its accent beside it becomes one letter', 'Dvor\u030ca\u0301k', 'Dvořák'],
  ['line ends and tabs become spaces', 'two\r\n\tlines', 'two lines'],
  ['the narrow space of French figures becomes one that every face has', '1\u202f234', '1\u00a0234'],
  ['letters joined to one are taken apart', 'e\ufb03cient', 'efficient'],
  ['wide figures and signs are made narrow', '￥１２', '¥12'],
  ['marks that turn the direction are left out', 'pay \u202eevil\u2066', 'pay evil'],
  ['control signs are left out', 'a\u0000b\u0007c', 'abc'],
  ['a letter that no face holds is shown as missing', 'piano 🎹', 'piano \ufffd'],
  ['half of a pair is shown as missing', 'x\ud83c', 'x\ufffd'],
])('%s', (_, text, expected) => {
  expect(legible(text, faces)).toBe(expected);
});

test('the sign of the shekel is not in the faces, that of the pound is', () => {
  expect([spells('₪12.00', faces), spells('£12.00', faces)]).toEqual([false, true]);
});
