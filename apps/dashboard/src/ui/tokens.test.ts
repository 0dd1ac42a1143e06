import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { contrast } from './contrast.ts';
import { colours, pairs, SCHEMES, tokensCss } from './tokens.ts';

// Ratios worked from the published formula (W3C, WCAG 2.2, definitions of contrast ratio and relative luminance;
// https://www.w3.org/TR/WCAG22/). 4.478 fails where 4.5 is asked: nothing is rounded up.
test.each([
  ['#000000', '#FFFFFF', 21],
  ['#767676', '#FFFFFF', 4.542],
  ['#777777', '#FFFFFF', 4.478],
  ['#959595', '#FFFFFF', 2.995],
  ['#949494', '#FFFFFF', 3.033],
  ['#0000FF', '#FFFFFF', 8.592],
  ['#FF0000', '#FFFFFF', 3.998],
  ['#FFFF00', '#FFFFFF', 1.074],
  ['#1A1A1A', '#F5F5F0', 15.914],
  ['#FFFFFF', '#FFFFFF', 1],
])('%s on %s has the contrast %f', (front, back, ratio) => {
  expect(contrast(front, back)).toBeCloseTo(ratio, 3);
});

describe.each(SCHEMES)('in the %s scheme', (scheme) => {
  test.each(pairs.map((pair) => [pair.front, pair.back, pair.least] as const))(
    '%s is told from %s by at least %f to 1',
    (front, back, least) => {
      expect(contrast(colours[front][scheme], colours[back][scheme])).toBeGreaterThanOrEqual(least);
    },
  );
});

test('the style sheet says the same colours as the table', () => {
  expect(readFileSync(new URL('./tokens.css', import.meta.url), 'utf8')).toBe(tokensCss());
});
