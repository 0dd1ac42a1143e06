// What a clause's form shows of its parameters as written.

import { fromDecimal, toDecimal } from '@colla/money';
import { refused } from '@colla/refusal';
import { asTyped } from '../../locale.ts';
import { sayFigure } from './figure.ts';
import type { Parameter, Shape } from './parameter.ts';
import { type Fields, fieldsOf, itemsOf, type Reader, type Typed } from './typed.ts';

/** What a form shows for parameters as written; usual values where nothing is written. */
export function typeFields(parts: readonly Parameter[], written: unknown, reader: Reader): Fields {
  const values = recordOf(written);
  return Object.fromEntries(
    parts.map(({ name, optional, shape }) => [name, type(shape, values[name], optional, reader)]),
  );
}

function type(shape: Shape, written: unknown, optional: boolean, reader: Reader): Typed {
  switch (shape.is) {
    case 'amount':
      return sayAmount(written ?? shape.usual, reader);
    case 'figure': {
      const figure = written ?? shape.usual;
      return figure === undefined ? '' : sayFigure(Number(figure), shape.unit);
    }
    case 'words':
    case 'choice':
      return String(written ?? shape.usual ?? (shape.is === 'choice' && !optional ? shape.words[0] : ''));
    case 'time':
      return String(written ?? '');
    case 'yes or no':
      return written === undefined ? shape.usual : written === true;
    case 'several':
    case 'clauses':
      return Array.isArray(written) ? written.map(String) : [];
    case 'own words':
      return Array.isArray(written) ? written.join('; ') : '';
    case 'list':
      return Array.isArray(written)
        ? written.map((item) => type(shape.of, item, false, reader))
        : Array.from({ length: optional ? 0 : shape.least }, () => type(shape.of, undefined, false, reader));
    case 'group':
      return written === undefined && optional ? undefined : typeFields(shape.parts, written, reader);
    case 'variant':
      return written === undefined && optional ? undefined : typeVariant(shape, written, reader);
  }
}

function typeVariant(shape: Extract<Shape, { is: 'variant' }>, written: unknown, reader: Reader): Fields {
  const word = recordOf(written)[shape.by];
  const variant = shape.variants.find((variant) => variant.word === word) ?? shape.variants[0];
  return {
    [shape.by]: variant?.word ?? '',
    ...typeFields(variant?.parts ?? [], written, reader),
  };
}

/**
 * A fresh value for a form, where one is added: a step of a scale, one of two variants. Figures that are needed begin
 * with one that can be read, so that the sentence says at once what there is to change.
 */
export function freshOf(shape: Shape, reader: Reader): Typed {
  return begun(shape, type(shape, undefined, false, reader), reader);
}

/** `place`: the how-manieth of its group, since an hour that ends where it begins is none. */
function begun(shape: Shape, typed: Typed, reader: Reader, place = 0): Typed {
  switch (shape.is) {
    case 'amount':
      return typed === '' ? sayAmount(BEGINNING.amount, reader) : typed;
    case 'figure':
      return typed === '' ? sayFigure(within(BEGINNING[shape.unit], shape), shape.unit) : typed;
    case 'time':
      return typed === '' ? (HOURS[place] ?? '') : typed;
    case 'several':
      return shape.least > 0 && itemsOf(typed).length === 0 ? shape.words.slice(0, 1) : typed;
    case 'list':
      return itemsOf(typed).map((item) => begun(shape.of, item, reader));
    case 'group':
      return begunFields(shape.parts, fieldsOf(typed), reader);
    case 'variant': {
      const chosen = shape.variants.find(({ word }) => word === fieldsOf(typed)[shape.by]);
      return begunFields(chosen?.parts ?? [], fieldsOf(typed), reader);
    }
    default:
      return typed;
  }
}

const BEGINNING = { amount: '10', minutes: 60, share: 5000, rate: 2000, count: 1, days: 7 };
const HOURS = ['20:00', '23:00'];

function within(figure: number, { least, most }: { least: number; most: number }): number {
  return Math.min(Math.max(figure, least), most);
}

/** Where none is needed, such as an end of a range, the last is begun with. */
function begunFields(parts: readonly Parameter[], fields: Fields, reader: Reader): Fields {
  const asked = parts.filter(({ optional }) => !optional);
  const needed = asked.length > 0 ? asked : parts.slice(-1);
  return {
    ...fields,
    ...Object.fromEntries(
      needed.map(({ name, shape }, place) => [name, begun(shape, fields[name], reader, place)]),
    ),
  };
}

/** Another of some variants; what both ask for is kept. */
export function turnTo(
  shape: Extract<Shape, { is: 'variant' }>,
  fields: Fields,
  word: string,
  reader: Reader,
): Fields {
  const parts = shape.variants.find((variant) => variant.word === word)?.parts ?? [];
  const fresh = begunFields(parts, typeFields(parts, undefined, reader), reader);
  const kept = parts.filter(({ name }) => fields[name] !== undefined).map(({ name }) => [name, fields[name]]);
  return { ...fresh, ...Object.fromEntries(kept), [shape.by]: word };
}

function sayAmount(written: unknown, { currency, locale }: Reader): string {
  if (written === undefined) return '';
  const amount = fromDecimal(String(written), currency);
  return refused(amount) ? String(written) : asTyped(toDecimal(amount, currency), locale);
}

function recordOf(written: unknown): Readonly<Record<string, unknown>> {
  return typeof written === 'object' && written !== null ? (written as Record<string, unknown>) : {};
}
