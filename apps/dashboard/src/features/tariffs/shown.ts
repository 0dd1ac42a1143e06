// What a clause's form shows of its parameters as written.

import { fromDecimal, toDecimal } from '@colla/money';
import { refused } from '@colla/refusal';
import { asTyped } from '../../locale.ts';
import { sayFigure } from './figure.ts';
import type { Parameter, Shape } from './parameter.ts';
import type { Fields, Reader, Typed } from './typed.ts';

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

/** A fresh value for a form, where one is added: a step of a scale, one of two variants. */
export function freshOf(shape: Shape, reader: Reader): Typed {
  return type(shape, undefined, false, reader);
}

function sayAmount(written: unknown, { currency, locale }: Reader): string {
  if (written === undefined) return '';
  const amount = fromDecimal(String(written), currency);
  return refused(amount) ? String(written) : asTyped(toDecimal(amount, currency), locale);
}

function recordOf(written: unknown): Readonly<Record<string, unknown>> {
  return typeof written === 'object' && written !== null ? (written as Record<string, unknown>) : {};
}
