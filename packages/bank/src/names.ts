// Whether two names mean the same person or body, as banks and people write them.

/** Said to somebody, not their name, and what joins two names. From memory. */
const ASIDE = 'mr mrs ms miss dr prof herr frau familie family mme mlle monsieur madame and und et'.split(
  ' ',
);

/**
 * A name's words to be compared, without capitals, marks over letters and titles, and with `u` for `ü` and `ue`. The
 * longest come first, so that a first letter takes no word from one written out.
 */
export function nameWords(name: string): string[] {
  const plain = name
    .normalize('NFKD')
    .replace(/\p{Mark}/gu, '')
    .toLowerCase()
    .replace(/[ßłøæœ]/g, (letter) => PLAIN[letter] ?? letter)
    .replace(/([aou])e/g, '$1');
  const words = plain
    .split(/[^\p{Letter}\p{Number}]+/u)
    .filter((word) => word !== '' && !ASIDE.includes(word));
  return words.sort((one, other) => other.length - one.length);
}

/** Letters that no mark is taken from, as they are written without. */
const PLAIN: Record<string, string> = { ß: 'ss', ł: 'l', ø: 'o', æ: 'a', œ: 'o' };

/**
 * Whether each word of the shorter name stands in the longer one, in any order: whole, as its first letter, or cut off
 * after four at least. Two words of three letters or more must meet: first letters alone are no name.
 */
export function namesAlike(one: readonly string[], other: readonly string[]): boolean {
  const [shorter, longer] = one.length < other.length ? [one, other] : [other, one];
  const left = [...longer];
  let met = false;
  for (const word of shorter) {
    const at = left.findIndex((candidate) => wordsAlike(word, candidate));
    const [found] = at < 0 ? [] : left.splice(at, 1);
    if (found === undefined) return false;
    met ||= word.length > 2 && found.length > 2;
  }
  return met;
}

function wordsAlike(one: string, other: string): boolean {
  const [short, long] = one.length < other.length ? [one, other] : [other, one];
  return short === long || ((short.length === 1 || short.length > 3) && long.startsWith(short));
}
