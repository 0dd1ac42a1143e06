// A clause's sentence with its figures as blanks to fill in. Where each stands is found by saying the sentence again
// with another figure: so every kind of clause has its blanks without knowing of them.

import type { WrittenClause } from '@colla/rates';
import { plainWord } from '../../catalogue/tariffs.ts';
import { type Leaf, pointerOf } from './leaves.ts';
import { type Placed, placesIn, sayIt, standing } from './places.ts';
import { changed, type Stretch, standsAt, wordsOf } from './stretch.ts';
import type { Reader } from './typed.ts';

/** A stretch of the sentence that says one parameter. */
export interface Blank {
  readonly text: string;
  readonly leaf: Leaf;
  /** Where it stands in the clause, as a JSON pointer. */
  readonly at: string;
  /** Whether it says the figure as it is typed, its unit beside it: the `30` of “30 minutes”, not “half an hour”. */
  readonly plain: boolean;
  /** Of a choice: each word, and what the sentence would then say. */
  readonly words: readonly { readonly word: string; readonly says: string }[];
}

/** What stands between blanks, and the blanks, in the order they are read. Together they are the sentence. */
export type Piece = string | Blank;

/** The sentence of a clause in pieces; undefined where the clause cannot be read. */
export function piecesOf(clause: WrittenClause, reader: Reader): Piece[] | undefined {
  const sentence = sayIt(clause, reader);
  if (sentence === undefined) return undefined;
  const said = wordsOf(sentence);
  const placed = placesIn(said, clause, reader);
  const pieces: Piece[] = [];
  let from = 0;
  for (const place of placed) {
    pieces.push(said.slice(from, place.at.from).join(''), blankOf(place, said));
    from = place.at.until;
  }
  return [...pieces, said.slice(from).join('')].filter((piece) => piece !== '');
}

function blankOf({ leaf, at, whole, plain, otherwise }: Placed, said: readonly string[]): Blank {
  const text = said.slice(at.from, at.until).join('');
  const words = wordsToChoose({ leaf, whole, otherwise }, text, said);
  return { text, leaf, at: pointerOf(leaf.path), plain, words };
}

/** Each as the sentence would say it in this place; in words of its own where it would say it elsewhere, or not at all. */
function wordsToChoose(
  { leaf, whole, otherwise }: Omit<Placed, 'plain' | 'at'>,
  text: string,
  said: readonly string[],
): Blank['words'] {
  const chosen = String(standing(leaf));
  const says = new Map(otherwise.map(({ value, said: other }) => [value, saysThere(whole, said, other)]));
  const taken = [...says.values(), text];
  return wordsIn(leaf).map(({ word, bare }) => {
    const there = word === chosen ? text : bare ? says.get(word) : undefined;
    const alone = there !== undefined && taken.filter((other) => other === there).length === 1;
    return { word, says: alone ? there : uncapital(plainWord(word)) };
  });
}

/** What may be chosen; `bare` where it brings no figures of its own, so that what it says is known beforehand. */
function wordsIn({ shape }: Leaf): { word: string; bare: boolean }[] {
  if (shape.is === 'choice') return shape.words.map((word) => ({ word, bare: true }));
  if (shape.is !== 'variant') return [];
  return shape.variants.map(({ word, parts }) => ({ word, bare: parts.length === 0 }));
}

function uncapital(words: string): string {
  return words.charAt(0).toLowerCase() + words.slice(1);
}

/** What another sentence says in a place of this one, where all else in it is the same. */
function saysThere(at: Stretch, one: readonly string[], other: readonly string[]): string | undefined {
  const change = changed(one, other);
  if (change && (change.from < at.from || change.until > at.until)) return undefined;
  const says = standsAt(at, one, other)
    .join('')
    .replaceAll(/^[\s,;]+|[\s,;]+$/g, '');
  return says === '' ? undefined : says;
}
