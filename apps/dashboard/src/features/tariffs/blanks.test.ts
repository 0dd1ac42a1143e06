// A clause's sentence carries its figures as blanks, whichever kind it is of, and reads the same with them as without.

import { currency } from '@colla/money';
import { KINDS, type Kind, menu, readClause, sentenceOf, type WrittenClause } from '@colla/rates';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { type Blank, type Piece, piecesOf } from './blanks.ts';
import { onSide, sideTyped } from './side.ts';

const reader = { currency: granted(currency('EUR')), locale: 'en-GB' };

describe('the sentence of a clause', () => {
  const examples = KINDS.flatMap((kind) =>
    menu[kind].examples.map((example, place) => ({
      kind,
      name: `${kind} ${place + 1}: ${example.case}`,
      example,
    })),
  );

  it.each(examples)('reads the same with its blanks as without: $name', ({ kind, example }) => {
    const clause = { id: 'x', kind, for: example.for, terms: example.terms };
    const pieces = piecesOf(clause, reader) ?? [];
    const sentence = sentenceOf(granted(readClause(clause, reader.currency)), reader);
    expect(pieces.map((piece) => (typeof piece === 'string' ? piece : piece.text)).join('')).toBe(sentence);
    expect(blanksIn(pieces).every(({ text }) => text.trim() !== '')).toBe(true);
  });

  it.each(examples)('gives each parameter one blank at most: $name', ({ kind, example }) => {
    const pieces = piecesOf({ id: 'x', kind, for: example.for, terms: example.terms }, reader) ?? [];
    const places = blanksIn(pieces).map(({ at }) => at);
    expect(new Set(places).size).toBe(places.length);
  });
});

const said: readonly [Kind, string][] = [
  ['hourly', '[All calls] are [60.00] [an hour], charged in [quarter hours], [one hour] at least.'],
  ['fixed', '[Juries] are [50.00] [each].'],
  [
    'package',
    '[Recital package]: [150.00], which includes [one call] named “[hearing]” and all [dress rehearsals and recitals]; what lies beyond is charged by the other clauses.',
  ],
  [
    'entitlement',
    'The [payer] covers [2 hours] of [rehearsals and exams] [in all], [exams] first; what lies beyond is charged by the other clauses.',
  ],
  ['supplement', '[Sunday]: [all calls] on [Sundays] are [25.00] more each.'],
  ['highest', 'Where [“sunday” and “holiday”] meet on one call, only the highest of them counts.'],
  [
    'late-score',
    'Music that comes later than [4 weeks] before the performance costs [25.00] more and later than [2 weeks] before the performance costs [50.00] more.',
  ],
  [
    'change',
    'Moving [calls]: [one change is] free with [48] hours’ notice, then [50] % of the fee, then [all] of the fee.',
  ],
  ['discount', '[Returning soloist]: the engagement is [10.00] less.'],
  ['limit', '[The week instead]: what “[hours]” charges is at most [400.00] [a week].'],
  ['travel', 'Travel is [0.35] a [km].'],
  ['cost', '[Costs, such as scores, fares and room hire]: passed on as paid.'],
  ['split', '[School] and [family] share [everything] equally.'],
  ['payee', 'What “[arranging]” charges is paid to [the festival].'],
  [
    'cancellation',
    'Cancelling a [call] costs [nothing] until [48] hours before, [50] [% of it] until [24] hours before, [75] [% of it] until [it begins], and [all of it] later. Word at exactly the limit is [in time]. What the pianist cancels costs nothing.',
  ],
  [
    'deposit',
    'A deposit of [25] [% of the fee] is due [3] days [after] the [agreement]; it counts towards [the final invoice].',
  ],
  ['payment', 'Payment is due [30] days [after] the [invoice].'],
  [
    'late-payment',
    'An invoice that is paid after it is due costs interest [8] % above the reference rate of the [United Kingdom] and its fixed sum, by the day in a year of [365] days.',
  ],
  ['tax', '[VAT] at [20] % is added.'],
];

describe('every kind of clause', () => {
  it.each(said)('has its figures in its sentence: %s', (kind, marked) => {
    expect(mark(firstOf(kind)).replaceAll('\u00a0', ' ')).toBe(marked);
  });

  it.each(KINDS)('has one blank at least: %s', (kind) => {
    expect(blanksIn(piecesOf(firstOf(kind), reader) ?? [])).not.toEqual([]);
  });
});

describe('a blank', () => {
  it('is named by its parameter, by what that is part of, and by its place in a list', () => {
    expect(namesIn(firstOf('cancellation'))).toEqual([
      'Kinds of call',
      'Leaves to pay (1)',
      'At least this much before (1)',
      'Leaves to pay, Share (2)',
      'Leaves to pay (2)',
      'At least this much before (2)',
      'Leaves to pay, Share (3)',
      'Leaves to pay (3)',
      'At least this much before (3)',
      'Any later',
      'Notice of exactly that much is',
    ]);
  });

  it('says which condition of the calls it belongs to', () => {
    const clause = { ...firstOf('fixed'), for: { minutes: { to: 20 }, daysAhead: { to: 3 } } };
    expect(mark(clause)).toBe(
      '[All calls] of up to [20] minutes asked for up to [3] days ahead are [50.00] [each].',
    );
    expect(namesIn(clause)).toContain('Calls of this length, To');
  });

  it('stands for the figure alone where it is said as typed, and for the words where it is not', () => {
    const [, , , steps, least] = blanksOf({
      id: 'x',
      kind: 'hourly',
      terms: { price: '60.00', minimum: 60 },
    });
    expect([steps?.text, steps?.plain]).toEqual(['quarter hours', false]);
    expect([least?.text, least?.plain]).toEqual(['one hour', false]);
    const forgiven = blanksOf({ id: 'x', kind: 'hourly', terms: { price: '60.00', grace: 5 } }).at(-1);
    expect([forgiven?.text, forgiven?.plain]).toEqual(['5', true]);
  });

  it('says on which side of an event its days lie, and leaves the days to be typed without a sign', () => {
    const due = { due: [{ event: 'principal call', days: -7 }] };
    const week = { id: 'x', kind: 'payment', terms: due };
    expect(mark(week)).toBe('Payment is due [7] days [before] the [principal call].');
    const side = blanksOf(week)[1];
    expect(side?.words).toEqual([
      { word: 'before', says: 'before' },
      { word: 'after', says: 'after' },
    ]);
    // Ten typed over the seven stays before it.
    expect(onSide('10', sideTyped('-7'))).toBe('-10');
    expect(onSide('-10', 'after')).toBe('10');
  });

  it('offers the words of a choice as the sentence would say them', () => {
    const each = blanksOf(firstOf('limit')).at(-1);
    expect(each?.words.map(({ says }) => says)).toContain('for the engagement');
    const leaves = blanksOf(firstOf('cancellation'))[1];
    // One that brings a figure says it beside itself: which of them it is stays to be chosen.
    const share = blanksOf(firstOf('cancellation'))[4];
    expect([share?.text, share?.words[1]]).toEqual(['% of it', { word: 'share', says: '% of it' }]);
    expect(leaves?.words).toEqual([
      { word: 'nothing', says: 'nothing' },
      { word: 'share', says: 'a share' },
      { word: 'amount', says: 'a sum' },
      { word: 'deposit', says: 'the deposit' },
      { word: 'all', says: 'all of it' },
    ]);
  });

  it('stands for a figure as the reader’s locale writes it', () => {
    const of = { id: 'x', kind: 'fixed', terms: { price: '4600.00', each: 'term', what: 'Stipend' } };
    const pieces = blanksIn(piecesOf(of, { ...reader, locale: 'de-DE' }) ?? []);
    expect(pieces.map(({ text }) => text)).toEqual(['Stipend', 'all calls', '4.600,00', 'a term']);
  });

  it('is not there where a figure is not said, and nothing is where the clause cannot be read', () => {
    expect(mark({ id: 'x', kind: 'hourly', terms: { price: '60.00' } })).toBe(
      '[All calls] are [60.00] [an hour], charged in [quarter hours].',
    );
    expect(piecesOf({ id: 'x', kind: 'hourly', terms: { price: 'much' } }, reader)).toBeUndefined();
  });
});

function firstOf(kind: Kind): WrittenClause {
  const [{ terms, for: selector }] = menu[kind].examples;
  return { id: 'x', kind, for: selector, terms };
}

function blanksOf(clause: WrittenClause): Blank[] {
  return blanksIn(piecesOf(clause, reader) ?? []);
}

function blanksIn(pieces: readonly Piece[]): Blank[] {
  return pieces.filter((piece) => typeof piece !== 'string');
}

function namesIn(clause: WrittenClause): string[] {
  return blanksOf(clause).map(({ leaf }) => leaf.title);
}

function mark(clause: WrittenClause): string {
  const pieces = piecesOf(clause, reader) ?? [];
  return pieces.map((piece) => (typeof piece === 'string' ? piece : `[${piece.text}]`)).join('');
}
