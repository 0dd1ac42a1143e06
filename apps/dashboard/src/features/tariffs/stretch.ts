// Which stretch of a sentence changes when something else is said: found by its words, from both ends inwards.

export interface Stretch {
  /** Places of its words in the sentence; the second is the first that no longer belongs to it. */
  readonly from: number;
  readonly until: number;
}

/** A sentence in its words, figures, marks and spaces. */
export function wordsOf(sentence: string): string[] {
  return sentence.match(WORD) ?? [];
}

const WORD = /\d+(?:[.,:\u00a0\u202f’']\d+)*|[\p{L}\p{M}]+(?:[-’'][\p{L}\p{M}]+)*|./gsu;

/** What of `one` is not as in `other`; undefined where `other` only says more, or the same. */
export function changed(one: readonly string[], other: readonly string[]): Stretch | undefined {
  const most = Math.min(one.length, other.length);
  let before = 0;
  while (before < most && one[before] === other[before]) before++;
  let after = 0;
  while (after < most - before && one[one.length - 1 - after] === other[other.length - 1 - after]) after++;
  const stretch = trimmed(one, { from: before, until: one.length - after });
  return stretch.from < stretch.until ? stretch : undefined;
}

/** From the first that belongs to any of them until the last. */
export function together(stretches: readonly Stretch[]): Stretch | undefined {
  if (stretches.length === 0) return undefined;
  return {
    from: Math.min(...stretches.map(({ from }) => from)),
    until: Math.max(...stretches.map(({ until }) => until)),
  };
}

/** What stands in `other` where `stretch` stands in `one`. */
export function standsAt(stretch: Stretch, one: readonly string[], other: readonly string[]): string[] {
  return other.slice(stretch.from, Math.max(stretch.from, other.length - (one.length - stretch.until)));
}

/** Whether a word of the stretch is in all that could stand there: then it does not say the parameter, or not alone. */
export function isMixed(said: readonly string[], others: readonly (readonly string[])[]): boolean {
  return said.some((word) => TELLING.test(word) && others.every((other) => other.includes(word)));
}

/** A word or figure that does not merely join others. */
const TELLING = /^(?!(?:and|or)$)[\p{L}\d]/u;

export function overlaps(one: Stretch, other: Stretch): boolean {
  return one.from < other.until && other.from < one.until;
}

/** Without the spaces and marks at its ends. */
export function trimmed(words: readonly string[], { from, until }: Stretch): Stretch {
  let [first, last] = [from, until];
  while (first < last && isMark(words[first])) first++;
  while (last > first && isMark(words[last - 1])) last--;
  return { from: first, until: last };
}

function isMark(word = ''): boolean {
  return /^[\s,;.:()]$/.test(word);
}
