// A first mapping for rows that nobody has mapped yet, from the headings and from what stands under them. Whatever these
// do not tell is left open, and the user says it.

import { type OrRefusal, refused } from '@colla/refusal';
import { DATE_ORDERS, DECIMAL_MARKS, dayIn, sumIn } from './cells.ts';
import { columnFor, columnsFor, isHeading } from './headings.ts';
import { columnsOf, type Mapping, type SidedSum, type SumColumns } from './mapping.ts';
import { type Delimiter, delimiterOf, type Row, rowsOf } from './rows.ts';

/** A mapping with what is still to be said left undefined. */
export type OpenMapping = { readonly [K in keyof Mapping]-?: Mapping[K] | undefined } & Delimited;

type Delimited = Pick<Mapping, 'delimiter' | 'headings' | 'words'>;

/** Rows that await a mapping, those of headings and before them among them. */
export interface Unmapped {
  readonly rows: readonly Row[];
  readonly proposed: OpenMapping;
}

/** Reads rows by `delimiter`, or by the one that fits best, and proposes their mapping. Refuses what `rowsOf` refuses. */
export function proposeMapping(text: string, delimiter: Delimiter = delimiterOf(text)): OrRefusal<Unmapped> {
  const rows = rowsOf(text, delimiter);
  if (refused(rows)) return rows;
  const at = headingRow(rows);
  const headings = rows[at]?.cells ?? [];
  const under = columnsUnder(rows.slice(at + 1, at + 1 + TELLING));
  const day = columnFor(headings, 'day');
  const sum = sumColumns(headings, under);
  const proposed = {
    delimiter,
    headings,
    day,
    dateOrder: onlyOne(DATE_ORDERS, under(day), dayIn),
    sum,
    decimalMark: onlyOne(DECIMAL_MARKS, under(...(sum ? columnsOf(sum) : [])), sumIn),
    name: columnFor(headings, 'name'),
    words: columnsFor(headings, 'words'),
    reference: columnFor(headings, 'reference'),
    bankId: columnFor(headings, 'bankId'),
    currencyOf: columnFor(headings, 'currencyOf'),
    currency: undefined,
  };
  return { rows, proposed };
}

/** Above the headings stand a few lines about the account; below them, as many rows as are looked at. */
const BEFORE = 50;
const TELLING = 1000;

/** The row with the most cells that read as headings, of two at least; -1 where none does. */
function headingRow(rows: readonly Row[]): number {
  const counts = rows.slice(0, BEFORE).map(({ cells }) => cells.filter(isHeading).length);
  const most = Math.max(...counts, 0);
  return most < 2 ? -1 : counts.indexOf(most);
}

/** The cells of some columns that hold anything. */
function columnsUnder(rows: readonly Row[]) {
  return (...columns: (number | undefined)[]): string[] =>
    rows.flatMap(({ cells }) =>
      columns.flatMap((column) => (column === undefined ? [] : cells[column] || [])),
    );
}

/** The one way in which every cell can be read; none where several would do, or none does. */
function onlyOne<Way>(
  ways: readonly Way[],
  cells: readonly string[],
  read: (cell: string, way: Way) => unknown,
): Way | undefined {
  const fit = ways.filter((way) => cells.every((cell) => read(cell, way) !== undefined));
  return fit.length === 1 ? fit[0] : undefined;
}

function sumColumns(
  headings: readonly string[],
  under: (...columns: number[]) => string[],
): SumColumns | undefined {
  const [one, side] = [columnFor(headings, 'sum'), columnFor(headings, 'side')];
  const [came, went] = [columnFor(headings, 'in'), columnFor(headings, 'out')];
  if (one === undefined)
    return came === undefined || went === undefined ? undefined : { in: came, out: went };
  if (side === undefined || under(one).some((cell) => /[-\u2212(]/.test(cell))) return { signed: one };
  return sided(one, side, under(side));
}

/** By what banks write for the two sides, where only such words stand there. */
function sided(unsigned: number, side: number, cells: readonly string[]): SidedSum | undefined {
  const written = [...new Set(cells)];
  const pair = SIDES.find((words) => written.every((word) => words.includes(word.toLowerCase())));
  if (!pair) return undefined;
  const as = (word: string) => written.find((one) => one.toLowerCase() === word) ?? word;
  return { unsigned, side, inWord: as(pair[0]), outWord: as(pair[1]) };
}

const SIDES: readonly (readonly [string, string])[] = [
  ['credit', 'debit'],
  ['crdt', 'dbit'],
  ['cr', 'dr'],
  ['c', 'd'],
  ['haben', 'soll'],
  ['h', 's'],
  ['crédit', 'débit'],
  ['in', 'out'],
  ['+', '-'],
];
