// Sharing an amount out to the last minor unit.

/**
 * Shares `amount` out by whole-number weights so that the parts sum to it exactly: largest remainder, ties
 * to the earlier share; a negative amount mirrors the positive one. No weight may be negative and at least one
 * must be above zero. (Done here because dinero.js 2.0.2 shares 10 by 1:2:3:5 as 0, 2, 3, 5.)
 */
export function allocate(amount: bigint, weights: readonly number[]): bigint[] {
  if (weights.some((weight) => weight < 0)) throw new Error('nobody can be given less than nothing');
  if (weights.every((weight) => weight === 0)) throw new Error('nobody to share with: every weight is zero');
  return apportion(amount, weights.map(BigInt));
}

/**
 * Parts of `amount` in proportion to other amounts, which may be below zero (what is taken off), so that they sum to
 * it exactly: largest remainder, ties to the earlier part. Equal parts where the other amounts come to nothing.
 */
export function apportion(amount: bigint, to: readonly bigint[]): bigint[] {
  if (to.length === 0) return [];
  if (amount < 0n) return apportion(-amount, to).map((part) => -part);
  const whole = to.reduce((sum, one) => sum + one, 0n);
  if (whole < 0n)
    return inProportion(
      amount,
      to.map((one) => -one),
      -whole,
    );
  return whole === 0n
    ? inProportion(
        amount,
        to.map(() => 1n),
        BigInt(to.length),
      )
    : inProportion(amount, to, whole);
}

/** `whole`, the sum of `to`, is above zero. */
function inProportion(amount: bigint, to: readonly bigint[], whole: bigint): bigint[] {
  const exact = to.map((one) => amount * one);
  const parts = exact.map((part) => (part - remainderOf(part, whole)) / whole);
  const left = Number(amount - parts.reduce((sum, part) => sum + part, 0n));
  for (const index of byRemainder(exact, whole).slice(0, left)) parts[index] = (parts[index] ?? 0n) + 1n;
  return parts;
}

/** What is left of a division that rounds down, also below zero. */
function remainderOf(exact: bigint, whole: bigint): bigint {
  return ((exact % whole) + whole) % whole;
}

/** Places of the parts, the largest remainder first and of equal ones the earlier. */
function byRemainder(exact: readonly bigint[], whole: bigint): number[] {
  const remainder = (index: number) => remainderOf(exact[index] ?? 0n, whole);
  return [...exact.keys()].sort((a, b) => Number(remainder(b) - remainder(a)) || a - b);
}
