import fc from 'fast-check';
import { expect, it } from 'vitest';
import { exactSums } from './exact-sum.ts';

it.each<[bigint[], bigint, number[][]]>([
  [[80n, 90n, 40n], 170n, [[0, 1]]],
  [[80n, 90n, 40n], 210n, [[0, 1, 2]]],
  [[80n, 90n, 40n], 90n, [[1]]],
  [
    [80n, 80n, 80n],
    160n,
    [
      [0, 1],
      [0, 2],
    ],
  ], // and 1 with 2, which is beyond the limit
  [[80n, 90n, 40n], 100n, []],
  [[80n], 0n, [[]]],
  [[], 5n, []],
])('of %s, %s is made up by %j', (sums, total, choices) => {
  expect(exactSums(sums, total, 2)).toEqual(choices);
});

it('only the first twelve sums are chosen from', () => {
  const sums = [...Array<bigint>(12).fill(100n), 7n];
  expect(exactSums(sums, 7n, 2)).toEqual([]);
  expect(exactSums(sums, 1200n, 2)).toHaveLength(1);
});

it('every choice comes to the total, and one is found wherever there is one', () => {
  const sums = fc.array(fc.bigInt({ min: 1n, max: 20n }), { maxLength: 8 });
  fc.assert(
    fc.property(sums, fc.bigInt({ min: 1n, max: 60n }), (all, total) => {
      const choices = exactSums(all, total, 2);
      const comesTo = (places: readonly number[]) =>
        places.reduce((sum, place) => sum + (all[place] ?? 0n), 0n);
      for (const places of choices) expect(comesTo(places)).toBe(total);
      expect(choices.length > 0).toBe(subsets(all).some((subset) => comesTo(subset) === total));
    }),
  );
});

/** Every choice of places, by brute force. */
function subsets(all: readonly bigint[]): number[][] {
  const masks = Array.from({ length: 2 ** all.length }, (_, mask) => mask);
  return masks.map((mask) => [...all.keys()].filter((place) => (mask >> place) % 2 === 1));
}
