// Where a sentence says the parameters of its clause: where it changes when they are written otherwise.

import { type Kind, readClause, sentenceOf, type WrittenClause } from '@colla/rates';
import { refused } from '@colla/refusal';
import { sayFigure } from './figure.ts';
import { type Leaf, leavesOf, valueAt, withAt } from './leaves.ts';
import { otherValues, sampleOf } from './other-values.ts';
import { hasSides, sideOf } from './side.ts';
import { changed, isMixed, overlaps, type Stretch, standsAt, together, trimmed, wordsOf } from './stretch.ts';
import type { Reader } from './typed.ts';

/** A leaf as it might be written otherwise, and the words of the sentence that would say so. */
interface Otherwise {
  readonly value: unknown;
  readonly said: readonly string[];
}

/** A leaf and where the sentence says it. */
export interface Placed {
  readonly leaf: Leaf;
  readonly at: Stretch;
  /** With the figures that one of several brings with it: of “50 % of it”, it is “% of it” that says which of several. */
  readonly whole: Stretch;
  /** Whether it says the figure as it is typed. */
  readonly plain: boolean;
  readonly otherwise: readonly Otherwise[];
}

/** The places of a sentence, in its order. Figures find theirs first; what encloses one of them is not said by itself, and has no blank. */
export function placesIn(said: readonly string[], clause: WrittenClause, reader: Reader): Placed[] {
  const leaves = leavesOf(clause, clause.kind as Kind, reader);
  const placed: Placed[] = [];
  for (const leaf of [...leaves].sort((one, other) => rankOf(one) - rankOf(other))) {
    const otherwise = saidOtherwise(leaf, clause, reader);
    const own = placed.filter((other) => isWithin(other.leaf, leaf));
    const free = (at: Stretch) => !placed.some((other) => !own.includes(other) && overlaps(other.at, at));
    const whole = isChoice(leaf)
      ? placeOfChoice(said, otherwise, free)
      : placeOfFigure(said, leaf, otherwise);
    const figure = whole && figureIn(whole, leaf, said);
    const at = figure ?? (whole && besideIts(own, whole, said));
    if (whole && at && free(at) && isSaid(at, leaf, said))
      placed.push(
        { leaf, at, whole, plain: figure !== undefined, otherwise },
        ...placeOfSide(leaf, said, clause, reader),
      );
  }
  return placed.sort((one, other) => one.at.from - other.at.from);
}

/** Where the sentence says on which side of an event so many days lie. */
function placeOfSide(leaf: Leaf, said: readonly string[], clause: WrittenClause, reader: Reader): Placed[] {
  const days = Number(standing(leaf));
  if (!hasSides(leaf) || days === 0) return [];
  const sentence = sayIt(withAt(clause, leaf.path, -days), reader);
  const other = sentence === undefined ? [] : wordsOf(sentence);
  const at = changed(said, other);
  const otherwise = [{ value: days < 0 ? 'after' : 'before', said: other }];
  return at ? [{ leaf: sideOf(leaf), at, whole: at, plain: false, otherwise }] : [];
}

/** Whether a figure is one of those that a variant brings with it. */
function isWithin({ path }: Leaf, variant: Leaf): boolean {
  return path.length > variant.path.length && variant.path.every((key, place) => path[place] === key);
}

/** What is left of a place on the one side of the figures in it; undefined where something is left on both. */
function besideIts(own: readonly Placed[], whole: Stretch, said: readonly string[]): Stretch | undefined {
  const figures = together(own.map(({ at }) => at).filter((at) => overlaps(at, whole)));
  if (!figures) return whole;
  const sides = [
    trimmed(said, { from: whole.from, until: figures.from }),
    trimmed(said, { from: figures.until, until: whole.until }),
  ].filter(({ from, until }) => from < until);
  return sides.length === 1 ? sides[0] : undefined;
}

/** A figure is a figure, or words that stand for it: “one hour”, “the planned time”; a little word could be anything. */
function isSaid({ from, until }: Stretch, leaf: Leaf, said: readonly string[]): boolean {
  if (leaf.shape.is !== 'figure' && leaf.shape.is !== 'amount') return true;
  const words = said.slice(from, until).join('');
  return standing(leaf) === undefined ? words.includes(' ') : /\d|\p{L}{3}/u.test(words);
}

function isChoice({ shape }: Pick<Leaf, 'shape'>): boolean {
  return shape.is === 'choice' || shape.is === 'variant';
}

/** What is written before what is not: there, “all calls” is a place for kinds of call first. */
function rankOf({ shape, value }: Leaf): number {
  if (value === undefined && !('usual' in shape)) return shape.is === 'several' ? 3 : 4;
  return isChoice({ shape }) ? 2 : isList(shape) ? 1 : 0;
}

function isList({ is }: Leaf['shape']): boolean {
  return is === 'several' || is === 'clauses' || is === 'own words';
}

function saidOtherwise(leaf: Leaf, clause: WrittenClause, reader: Reader): Otherwise[] {
  return otherValues(leaf.shape, reader.currency)
    .filter((value) => String(value) !== String(standing(leaf)))
    .flatMap((value) => {
      const sentence = sayIt(withAt(clause, leaf.path, writtenAs(value, leaf, clause, reader)), reader);
      return sentence === undefined ? [] : [{ value, said: wordsOf(sentence) }];
    });
}

/** The sentence of a clause; undefined where it cannot be read. */
export function sayIt(clause: WrittenClause, reader: Reader): string | undefined {
  const read = readClause(clause, reader.currency);
  return refused(read) ? undefined : sentenceOf(read, reader);
}

/** As written, or what stands where nothing is. */
export function standing({ shape, value }: Leaf): unknown {
  return value ?? ('usual' in shape ? shape.usual : undefined);
}

/** Another variant is written with parameters of its own. */
function writtenAs(value: unknown, { shape, path }: Leaf, clause: WrittenClause, reader: Reader): unknown {
  if (shape.is !== 'variant') return value;
  const parts = shape.variants.find(({ word }) => word === value)?.parts ?? [];
  const kept = Object.entries(Object(valueAt(clause, path))).filter(([name]) =>
    parts.some((part) => part.name === name),
  );
  return { ...sampleOf(parts, reader.currency), ...Object.fromEntries(kept), [shape.by]: value };
}

/** Where every other value changes the sentence, and nothing else than the parameter is said there. */
function placeOf(said: readonly string[], otherwise: readonly Otherwise[]): Stretch | undefined {
  const stretches = otherwise.map((other) => changed(said, other.said));
  if (stretches.includes(undefined)) return undefined;
  const at = together(stretches.filter((stretch) => stretch !== undefined));
  if (!at) return undefined;
  const others = otherwise.map((other) => standsAt(at, said, other.said));
  return isMixed(said.slice(at.from, at.until), others) ? undefined : at;
}

/** As widely as all other values reach; where that is too wide, as those do that are said alike. */
function placeOfFigure(said: readonly string[], leaf: Leaf, otherwise: readonly Otherwise[]) {
  const alike = otherwise.filter(({ value }) => isAlike(value, standing(leaf)));
  const [first, second] = isList(leaf.shape) ? [alike, otherwise] : [otherwise, alike];
  const at = placeOf(said, first) ?? placeOf(said, second);
  return at && inItsQuotes(at, said);
}

/** As many words; or days on the same side of an event, before it or after it. */
function isAlike(value: unknown, now: unknown): boolean {
  return Array.isArray(value) && Array.isArray(now)
    ? value.length === now.length
    : Number(value) * Number(now) > 0;
}

/** Several in quotation marks, with the outermost marks too. */
function inItsQuotes({ from, until }: Stretch, said: readonly string[]): Stretch {
  const within = said.slice(from, until).includes('“');
  return within && said[from - 1] === '“' && said[until] === '”'
    ? { from: from - 1, until: until + 1 }
    : { from, until };
}

/** Some choices say the whole sentence another way: its place is where the others change it. */
function placeOfChoice(
  said: readonly string[],
  otherwise: readonly Otherwise[],
  free: (at: Stretch) => boolean,
): Stretch | undefined {
  const local = otherwise.filter((other) => {
    const at = changed(said, other.said);
    return at !== undefined && free(at);
  });
  return placeOf(said, local);
}

/** The figure alone, where it is said as it is typed: its unit is then said beside it. */
function figureIn({ from, until }: Stretch, leaf: Leaf, said: readonly string[]) {
  const { shape } = leaf;
  if (shape.is !== 'figure') return undefined;
  const typed = digits(sayFigure(Number(standing(leaf)), shape.unit));
  const places = said.flatMap((word, place) =>
    place >= from && place < until && /\d/.test(word) ? [place] : [],
  );
  const [place] = places;
  if (place === undefined || places.length > 1 || digits(said[place] ?? '') !== typed) return undefined;
  return { from: place, until: place + 1 };
}

function digits(text: string): string {
  return text.replaceAll(/\D/g, '');
}
