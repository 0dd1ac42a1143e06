// The one place where an exact quotient becomes whole minor units.

/**
 * `numerator / denominator` rounded to a whole number, ties away from zero, so that a refund mirrors its
 * charge: `divideRounded(-n, d) === -divideRounded(n, d)`. (Ties away from zero is `half_up` in the Java
 * and PostgreSQL tables.) `denominator` must be positive.
 */
export function divideRounded(numerator: bigint, denominator: bigint): bigint {
  if (denominator <= 0n) throw new Error(`cannot share by ${denominator}`);
  const half = denominator / 2n;
  if (numerator < 0n) return -((-numerator + half) / denominator);
  return (numerator + half) / denominator;
}

/** A whole in ten-thousandths: 100 % is 10 000 basis points. */
export const WHOLE = 10_000;

/** `basisPoints` of an amount, rounded once: 2 500 is a quarter. */
export function shareOf(amount: bigint, basisPoints: number): bigint {
  return divideRounded(amount * BigInt(basisPoints), BigInt(WHOLE));
}
