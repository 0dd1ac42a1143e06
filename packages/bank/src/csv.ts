// A bank's rows of separated values, read into entries by a mapping. One wrong row, and nothing of the file is read.

import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import { type DecimalMark, dayIn, sumIn } from './cells.ts';
import { type BankEntry, type BankStatement, identified, type Movement } from './entry.ts';
import { columnsOf, type Mapping } from './mapping.ts';
import { quoted, sumOfRow, type Wrong } from './row-sum.ts';
import { type Row, rowsOf } from './rows.ts';

/**
 * Reads the rows of an account's file. Refuses one with other headings than the mapping remembers, and one with rows
 * that are no entries, which it names by line: another number of cells, no day, no sum, a currency of no country; and
 * one that breaks off.
 */
export function readCsv(text: string, mapping: Mapping, account: string): OrRefusal<BankStatement> {
  const rows = rowsOf(text, mapping.delimiter);
  if (refused(rows)) return rows;
  const entries = rowsUnderHeadings(rows, mapping);
  if (refused(entries)) return entries;
  const movements: Movement[] = [];
  const wrong: string[] = [];
  for (const row of entries) {
    const read = movementIn(row, mapping);
    if ('why' in read) wrong.push(`in line ${row.line}, ${read.why}`);
    else movements.push(read);
  }
  if (isCutOff(text, entries, mapping)) wrong.push('the last sum breaks off');
  if (wrong.length > 0) return wrongRows(wrong);
  return { account, entries: identified(account, movements), pending: 0 };
}

/** All rows where a file has no headings; whatever a bank writes above them says nothing of entries. */
function rowsUnderHeadings(rows: readonly Row[], { headings }: Mapping): OrRefusal<readonly Row[]> {
  if (headings.length === 0) return rows;
  const at = rows.findIndex(({ cells }) => alike(cells, headings));
  if (at >= 0) return rows.slice(at + 1);
  return new Refusal(
    'bank/other-columns',
    `The file has other columns than the last one of this account, which had ${headings.filter(Boolean).map(quoted).join(', ')}. Say again which column is which.`,
  );
}

function alike(cells: readonly string[], headings: readonly string[]): boolean {
  const same = (one: string, other: string | undefined) => one.toLowerCase() === other?.toLowerCase();
  return cells.length === headings.length && cells.every((cell, column) => same(cell, headings[column]));
}

/**
 * Whether a file was cut in the middle of its last sum: the line has no end, and the sum, its last cell, fewer decimals
 * than all others.
 */
function isCutOff(text: string, rows: readonly Row[], { sum, decimalMark }: Mapping): boolean {
  const column = (rows.at(-1)?.cells.length ?? 0) - 1;
  if (/[\r\n]$/.test(text) || rows.length < 2 || !columnsOf(sum).includes(column)) return false;
  const decimals = rows.map(({ cells }) => decimalsIn(cells[column], decimalMark));
  const last = decimals.pop() ?? 0;
  return decimals.every((count) => count > last);
}

function decimalsIn(cell = '', mark: DecimalMark): number {
  return sumIn(cell, mark)?.decimal.split('.')[1]?.length ?? 0;
}

function movementIn({ cells }: Row, mapping: Mapping): Movement | Wrong {
  const misplaced = cellsAmiss(cells, mapping.headings);
  if (misplaced) return misplaced;
  const on = dayIn(cells[mapping.day] ?? '', mapping.dateOrder);
  if (!on) return { why: `${quoted(cells[mapping.day])} is no day written as ${mapping.dateOrder}` };
  const sum = sumOfRow(cells, mapping);
  return 'why' in sum
    ? sum
    : { entry: { on, ...sum, ...factsIn(cells, mapping) }, told: cells.filter(tells) };
}

/** A row with a cell too few has broken off, and with one too many has lost a quotation mark: its cells stand elsewhere. */
function cellsAmiss(cells: readonly string[], headings: readonly string[]): Wrong | undefined {
  if (headings.length === 0) return undefined;
  const few = cells.length <= headings.findLastIndex((heading) => heading !== '');
  const many = cells.slice(headings.length).some((cell) => cell !== '');
  return few || many
    ? { why: `there are ${cells.length} cells under ${headings.length} headings` }
    : undefined;
}

function factsIn(
  cells: readonly string[],
  mapping: Mapping,
): Omit<BankEntry, 'identity' | 'on' | 'amount' | 'currency'> {
  const said = (column: number | undefined) => (column === undefined ? '' : oneLine(cells[column] ?? ''));
  const [name, reference, bankId] = [said(mapping.name), said(mapping.reference), said(mapping.bankId)];
  return {
    ...(name && { name }),
    words: mapping.words.map(said).filter(Boolean).join(' '),
    references: reference ? [reference] : [],
    ...(bankId && { bankId }),
    reversal: false,
  };
}

function oneLine(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}

/**
 * Whether a cell tells one movement from another: its words do, whatever column is mapped to what. Figures do not: a
 * running balance counts from wherever the file begins.
 */
function tells(cell: string): boolean {
  return /\p{Letter}/u.test(cell) && !sumIn(cell, '.') && !sumIn(cell, ',');
}

const SHOWN = 3;

function wrongRows(wrong: readonly string[]): Refusal {
  const more = wrong.length > SHOWN ? `; and so in ${wrong.length - SHOWN} more` : '';
  return new Refusal(
    'bank/wrong-rows',
    `Nothing of the file was read: ${wrong.slice(0, SHOWN).join('; ')}${more}. Say again which column is which, or take lines that are no entries out of the file.`,
    { rows: wrong.length },
  );
}
