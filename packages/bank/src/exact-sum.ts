// Which of several sums make up another exactly.

/** Of more sums than these only the first are looked at: 4096 ways to choose are enough for one payer. */
const MOST = 12;

/**
 * Up to `limit` choices of `sums`, all above zero, that come to `total`: places in rising order, those with the earliest
 * sums first.
 */
export function exactSums(sums: readonly bigint[], total: bigint, limit: number): number[][] {
  const few = sums.slice(0, MOST);
  /** What all sums from a place on come to. */
  const after = few.map((_, place) => few.slice(place).reduce((sum, one) => sum + one, 0n));
  const found: number[][] = [];
  const choose = (place: number, left: bigint, chosen: readonly number[]): void => {
    if (left === 0n) found.push([...chosen]);
    const sum = few[place];
    if (left <= 0n || sum === undefined || found.length >= limit || (after[place] ?? 0n) < left) return;
    choose(place + 1, left - sum, [...chosen, place]);
    if (found.length < limit) choose(place + 1, left, chosen);
  };
  choose(0, total, []);
  return found;
}
