// Rows of cells in a text of separated values, by RFC 4180, each with its line, so that a wrong one can be pointed at.
// Done here in a few lines: the parsers at hand either need Node's buffers or do not tell the line.

import { type OrRefusal, Refusal } from '@colla/refusal';

export const DELIMITERS = [';', ',', '\t'] as const;
export type Delimiter = (typeof DELIMITERS)[number];

export interface Row {
  /** The line of the file on which it begins, from 1. */
  readonly line: number;
  /** As written, without quotation marks around them and spaces at their ends. */
  readonly cells: readonly string[];
}

/**
 * The rows of a text; blank lines are none. A cell in quotation marks may hold delimiters, line ends and, doubled,
 * quotation marks. Refuses a quotation mark that is not closed, or closed before the cell ends.
 */
export function rowsOf(text: string, delimiter: Delimiter): OrRefusal<Row[]> {
  const rows: Row[] = [];
  const { stopped } = eachRow(text, delimiter, (row) => rows.push(row));
  if (stopped === undefined) return rows;
  return new Refusal(
    'bank/open-quotation',
    `The quotation mark in line ${stopped} does not close at the end of its cell, so nothing of the file was read. Take the file from your bank again.`,
    { line: stopped },
  );
}

/** The delimiter by which most of the first rows fall into as many cells as one another; of several, into most cells. */
export function delimiterOf(text: string): Delimiter {
  const start = text.slice(0, 20_000);
  const scores = DELIMITERS.map((delimiter) => {
    const widths = new Map<number, number>();
    eachRow(start, delimiter, ({ cells }) => widths.set(cells.length, (widths.get(cells.length) ?? 0) + 1));
    return Math.max(0, ...[...widths].map(([width, rows]) => (width - 1) * rows));
  });
  return DELIMITERS[scores.indexOf(Math.max(...scores))] ?? ';';
}

/** Gives the rows one by one; answers with the line on which a cell could not be read, where one could not. */
function eachRow(
  text: string,
  delimiter: Delimiter,
  give: (row: Row) => void,
): { readonly stopped?: number } {
  const cell = new RegExp(
    `(?: *"([^"]*(?:""[^"]*)*)" *|(?! *")([^${delimiter}\r\n]*))(${delimiter}|\r\n|\n|\r|$)`,
    'y',
  );
  let [line, begun]: [number, number] = [1, 1];
  let cells: string[] = [];
  while (cell.lastIndex < text.length) {
    const found = cell.exec(text);
    if (!found) return { stopped: line };
    const [, quoted, plain = '', end] = found;
    cells.push((quoted?.replaceAll('""', '"') ?? plain).trim());
    line += quoted?.match(/\r\n|\n|\r/g)?.length ?? 0;
    if (end === delimiter && cell.lastIndex < text.length) continue;
    if (end === delimiter) cells.push('');
    if (cells.some((written) => written !== '')) give({ line: begun, cells });
    [line, begun, cells] = [line + 1, line + 1, []];
  }
  return {};
}
