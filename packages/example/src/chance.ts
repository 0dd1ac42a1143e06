// Chance that can be had again: the same seed deals the same hand.

/** Draws from a seed. */
export interface Chance {
  /** A whole number from 0 up to, and without, `below`. */
  readonly below: (below: number) => number;
  /** One of several. */
  readonly of: <Item>(items: readonly [Item, ...Item[]]) => Item;
  /** True so many times in a hundred. */
  readonly inHundred: (times: number) => boolean;
}

/** A linear congruential generator modulo 2³² (multiplier and increment from memory, after Knuth and Lewis). */
export function chance(seed: number): Chance {
  let state = seed >>> 0;
  const below = (limit: number) => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return Math.floor((state / 2 ** 32) * limit);
  };
  return {
    below,
    of: (items) => items[below(items.length)] ?? items[0],
    inHundred: (times) => below(100) < times,
  };
}
