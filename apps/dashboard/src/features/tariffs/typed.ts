// What people type into a clause's form, read into its parameters as written.

import { type Currency, fromTyped, toDecimal } from '@colla/money';
import { refused } from '@colla/refusal';
import { tariffs as say } from '../../catalogue/tariffs.ts';
import { readFigure } from './figure.ts';
import type { Parameter, Shape } from './parameter.ts';

/** What stands in a form: text as typed, marks, lists, groups; undefined where something optional is left out. */
export type Typed = string | boolean | readonly Typed[] | Fields | undefined;
export interface Fields {
  readonly [name: string]: Typed;
}

/** One thing wrong: where, as a JSON pointer, and what to do about it. */
export interface Slip {
  readonly pointer: string;
  readonly detail: string;
}

/** Whose figures are read: the tariff's currency, the marks of the reader's locale. */
export interface Reader {
  readonly currency: Currency;
  readonly locale: string;
}

/** What the fields of a form need beside their values: how figures are read, and what is wrong so far. */
export interface Filling {
  readonly reader: Reader;
  readonly slips: readonly Slip[];
  /** The short names of the other clauses. */
  readonly others: readonly string[];
  /** Pointers of what the sentence has a field for, and need not be asked again. */
  readonly said: ReadonlySet<string>;
}

export interface Written {
  /** Absent where nothing is typed, and the clause's own usual value stands. */
  readonly value?: unknown;
  readonly slips: readonly Slip[];
}

interface Asked {
  readonly title: string;
  readonly optional: boolean;
  readonly pointer: string;
}

const nothing: Written = { slips: [] };

/** Reads every parameter of a group. Slips point into it from `pointer`. */
export function writeFields(
  parts: readonly Parameter[],
  fields: Fields,
  pointer: string,
  reader: Reader,
): { value: Record<string, unknown>; slips: Slip[] } {
  const value: Record<string, unknown> = {};
  const slips: Slip[] = [];
  for (const { name, shape, title, optional } of parts) {
    const asked = { title, optional, pointer: `${pointer}/${name}` };
    const written = write(shape, fields[name], asked, reader);
    if (written.value !== undefined) value[name] = written.value;
    slips.push(...written.slips);
  }
  return { value, slips };
}

function write(shape: Shape, typed: Typed, asked: Asked, reader: Reader): Written {
  switch (shape.is) {
    case 'amount':
      return text(typed, shape.usual, asked, 'wantedAmount', (said) => {
        const amount = fromTyped(said, reader.currency, reader.locale);
        return refused(amount)
          ? slip(asked, amount.sentence)
          : { value: toDecimal(amount, reader.currency), slips: [] };
      });
    case 'figure':
      return text(typed, shape.usual, asked, 'wantedFigure', (said) => {
        const figure = readFigure(said, shape, asked.title);
        return refused(figure) ? slip(asked, figure.sentence) : { value: figure, slips: [] };
      });
    case 'words':
      return text(typed, shape.usual, asked, 'wantedWords', (value) => ({ value, slips: [] }));
    case 'time':
      return text(typed, undefined, asked, 'wantedTime', (value) => ({ value, slips: [] }));
    case 'choice':
      return text(typed, shape.usual, asked, 'wantedChoice', (value) => ({ value, slips: [] }));
    case 'yes or no':
      return (typed === true) === shape.usual ? nothing : { value: typed === true, slips: [] };
    default:
      return writeMany(shape, typed, asked, reader);
  }
}

function writeMany(
  shape: Extract<Shape, { is: 'several' | 'clauses' | 'own words' | 'list' | 'group' | 'variant' }>,
  typed: Typed,
  asked: Asked,
  reader: Reader,
): Written {
  switch (shape.is) {
    case 'several':
    case 'clauses':
    case 'own words': {
      const words = typeof typed === 'string' ? wordsIn(typed) : itemsOf(typed);
      if (words.length > 0) return { value: words, slips: [] };
      return shape.least === 0 ? nothing : missing(asked, 'wantedOne');
    }
    case 'list': {
      if (asked.optional && itemsOf(typed).length === 0) return nothing;
      const items = itemsOf(typed).map((item, index) =>
        write(shape.of, item, { ...asked, optional: false, pointer: `${asked.pointer}/${index}` }, reader),
      );
      return { value: items.map(({ value }) => value), slips: items.flatMap(({ slips }) => slips) };
    }
    case 'group':
      if (typed === undefined && asked.optional) return nothing;
      return writeFields(shape.parts, fieldsOf(typed), asked.pointer, reader);
    case 'variant': {
      if (typed === undefined && asked.optional) return nothing;
      const fields = fieldsOf(typed);
      const variant = shape.variants.find(({ word }) => word === fields[shape.by]) ?? shape.variants[0];
      const { value, slips } = writeFields(variant?.parts ?? [], fields, asked.pointer, reader);
      return { value: { [shape.by]: variant?.word, ...value }, slips };
    }
  }
}

/** One line of text; nothing typed leaves the usual value standing, or is a slip where something is needed. */
function text(
  typed: Typed,
  usual: string | number | undefined,
  asked: Asked,
  wanted: Wanted,
  read: (said: string) => Written,
): Written {
  const said = typeof typed === 'string' ? typed.trim() : '';
  if (said !== '') return read(said);
  return usual === undefined ? missing(asked, wanted) : nothing;
}

type Wanted = 'wantedAmount' | 'wantedFigure' | 'wantedWords' | 'wantedTime' | 'wantedChoice' | 'wantedOne';

function missing(asked: Asked, wanted: Wanted): Written {
  return asked.optional ? nothing : slip(asked, say('empty', { title: asked.title, wanted: say(wanted) }));
}

function slip({ pointer }: Asked, detail: string): Written {
  return { slips: [{ pointer, detail }] };
}

/** Words parted by semicolons: a name may hold a comma. */
export function wordsIn(text: string): string[] {
  return text
    .split(';')
    .map((word) => word.trim())
    .filter((word) => word !== '');
}

export function fieldsOf(typed: Typed): Fields {
  return typeof typed === 'object' && !Array.isArray(typed) ? (typed as Fields) : {};
}

export function itemsOf(typed: Typed): readonly Typed[] {
  return Array.isArray(typed) ? typed : [];
}
