// The check of ISO 7064, mod 97-10, which account numbers and payment references share.

/**
 * The remainder by 97 of capital letters and figures, each letter read as two figures: A is 10, Z is 35. An account
 * number or reference is right where it is 1, once its first four places stand last.
 */
export function mod97(text: string): number {
  let rest = 0;
  for (const sign of text) rest = (rest * (sign > '9' ? 100 : 10) + Number.parseInt(sign, 36)) % 97;
  return rest;
}

/** Without the spaces in which such numbers are printed, in capitals. */
export function compact(printed: string): string {
  return printed.replace(/\s/g, '').toUpperCase();
}

/** In groups of four, as such numbers are printed. */
export function inFours(compact: string): string {
  return compact.replace(/.{4}(?=.)/g, '$& ');
}
