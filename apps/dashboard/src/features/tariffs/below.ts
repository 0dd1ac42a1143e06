// What is asked below a sentence stays there while one is below it: a field takes its place in the sentence only once
// “More” is folded, so that none moves away under the hand that types in it or ticks it.
import { useState } from 'react';
import type { Blank, Piece } from './blanks.ts';

interface Below {
  /** Every field that the clause has, by JSON pointers in it. */
  readonly all: readonly string[];
  /** Those that its sentence could have blanks for. */
  readonly said: ReadonlySet<string>;
  /** Whether “More” is open. */
  readonly open: boolean;
}

/** The fields that stay below although the sentence may say them by now. */
export function useBelow(below: Below): ReadonlySet<string> {
  const [held, setHeld] = useState<readonly string[]>([]);
  const stay = stayBelow(held, below);
  if (stay.join() !== held.join()) setHeld(stay);
  return new Set(stay);
}

/** Those that stood there, and those that the sentence has no blank for; nothing once it is folded. */
export function stayBelow(held: readonly string[], { all, said, open }: Below): readonly string[] {
  return open ? all.filter((at) => held.includes(at) || !said.has(at)) : [];
}

/** The sentence with the figures that are asked below it as plain words. */
export function withoutBelow(pieces: readonly Piece[], below: ReadonlySet<string>): Piece[] {
  const pieced: Piece[] = [];
  for (const piece of pieces) {
    const words = wordsOf(piece, below);
    const last = pieced.at(-1);
    if (words === undefined) pieced.push(piece);
    else if (typeof last === 'string') pieced[pieced.length - 1] = last + words;
    else pieced.push(words);
  }
  return pieced;
}

function wordsOf(piece: string | Blank, below: ReadonlySet<string>): string | undefined {
  if (typeof piece === 'string') return piece;
  return below.has(piece.at) ? piece.text : undefined;
}
