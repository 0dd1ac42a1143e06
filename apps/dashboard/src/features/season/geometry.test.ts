import { describe, expect, test } from 'vitest';
import { onPaper, onScreen } from './geometry.ts';
import { heightOf, widthOf } from './ruler.ts';

describe('the score on a screen', () => {
  test('fills a desk with the weeks there are', () => {
    // 1232 less 232 for the names and 20 beyond the last day leaves 980: 61 for each of 16 weeks.
    expect(onScreen(1232, { first: 0, weeks: 16 }).ruler.week).toBe(61);
  });

  test('moves sideways on a phone rather than crowd: a day is nine pixels wide', () => {
    const { names, ruler } = onScreen(358, { first: 0, weeks: 16 });
    expect([names, ruler.week]).toEqual([116, 63]);
  });
});

describe.each([1, 7, 20, 40])('the score of %i staves on paper', (staves) => {
  test.each([16, 26, 53])('and %i weeks fits one page', (weeks) => {
    const { names, chart, ruler } = onPaper({ first: 0, weeks, staves });
    expect(names + widthOf(ruler)).toBeLessThanOrEqual(960);
    expect(44 + staves * heightOf(ruler) + chart).toBeLessThanOrEqual(520 + 1e-6);
  });
});
