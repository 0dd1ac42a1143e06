import { expect, test } from 'vitest';
import { type Band, tied, together } from './band.ts';
import { castOff, flow } from './flow.ts';
import type { Box } from './page.ts';

// Room for 100 points; each band is 10 high and carries its name.
const box: Box = { left: 0, right: 100, top: 20, bottom: 120, foot: 130 };

function band(name: string, differs: Partial<Band> = {}): Band {
  const words = [{ text: name, x: 0, y: 7, width: 10, face: 'text', size: 8, ink: 'ebony' } as const];
  return { words, rules: [], height: 10, before: 0, withNext: false, ...differs };
}

const bands = (count: number, differs: Partial<Band> = {}) =>
  Array.from({ length: count }, (_, index) => band(String(index + 1), differs));

const read = (all: readonly Band[], last: readonly Band[] = []) =>
  flow(all, last, box).map(({ words }) => words.map(({ text, y }) => `${text}@${y}`).join(' '));

test('ten bands of ten points fill a page, an eleventh begins the next at its top', () => {
  const [first, second, ...more] = read(bands(11));
  expect([first?.split(' ').length, second, more]).toEqual([10, '11@27', []]);
});

test('the space above a band is kept within a page and dropped at its top', () => {
  expect(read([band('a', { before: 5 }), band('b', { before: 5 })])).toEqual(['a@27 b@42']);
});

test('bands that stay together move to the next page together', () => {
  const pair = together([band('x'), band('y')]);
  expect(read([...bands(9), ...pair])[1]).toBe('x@27 y@37');
});

test('bands that stay together and fill more than a page are parted where the page ends', () => {
  const pages = read(together(bands(12)));
  expect(pages.map((page) => page.split(' ').length)).toEqual([10, 2]);
});

test('a further page of a table says its head again', () => {
  expect(read(bands(11, { again: [band('head')] }))[1]).toBe('head@27 11@37');
});

test('what is tied to the last row takes that row along', () => {
  const rows = bands(10, { again: [band('head')] });
  const last = tied(rows.slice(-1));
  expect(read([...rows.slice(0, -1), ...last, band('total')])[1]).toBe('head@27 10@37 total@47');
});

test('the imprint stands at the foot of the last page', () => {
  expect(read([band('a')], together([band('x'), band('y')]))).toEqual(['a@27 x@107 y@117']);
});

test('an imprint that does not fit takes the end of the text with it to the next page', () => {
  const pages = read([...bands(8), ...together([band('a'), band('b')])], [band('x')]);
  expect([pages[0]?.split(' ').length, pages[1]]).toEqual([8, 'a@27 b@37 x@117']);
});

test('an imprint of more than a page goes on where the text ends', () => {
  const pages = read([band('a')], bands(12));
  expect(pages.map((page) => page.split(' ').length)).toEqual([10, 3]);
});

test('bands stand closer where that saves a page', () => {
  // Eight bands and seven spaces of 4 are 108 points, of 3.2 they are 102.4, of 2.4 they are 96.8.
  const pages = castOff(bands(8, { before: 4 }), [], box).map(({ words }) => words.map(({ y }) => y));
  expect(pages).toHaveLength(1);
  expect(pages[0]?.at(-1)).toBeCloseTo(27 + 7 * 12.4, 6);
});

test('bands keep their space where standing closer saves no page', () => {
  const pages = castOff(bands(14, { before: 4 }), [], box).map(({ words }) => words.map(({ y }) => y));
  expect(pages[0]?.slice(0, 2)).toEqual([27, 41]);
});
