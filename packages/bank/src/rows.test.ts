import { granted } from '@colla/refusal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DELIMITERS, delimiterOf, rowsOf } from './rows.ts';

describe('rows of a file', () => {
  it('have their cells, without the spaces around', () => {
    expect(rowsOf('Day; Sum\r\n25.11.2026;80,00 \r\n', ';')).toEqual([
      { line: 1, cells: ['Day', 'Sum'] },
      { line: 2, cells: ['25.11.2026', '80,00'] },
    ]);
  });

  it('end with any of the ends that a line has, and the last one without', () => {
    expect(granted(rowsOf('a\nb\rc\r\nd', ',')).map(({ line, cells }) => [line, ...cells])).toEqual([
      [1, 'a'],
      [2, 'b'],
      [3, 'c'],
      [4, 'd'],
    ]);
  });

  it('keep a delimiter, a line end and a quotation mark inside quotation marks, and count their lines', () => {
    const text = '1,"Lesson, with\r\n""Widmung""\n",80\n2,"",90\n';
    expect(rowsOf(text, ',')).toEqual([
      { line: 1, cells: ['1', 'Lesson, with\r\n"Widmung"', '80'] },
      { line: 4, cells: ['2', '', '90'] },
    ]);
  });

  it('may have spaces around quotation marks', () => {
    expect(rowsOf('1, "Lind, Bo" ,80', ',')).toEqual([{ line: 1, cells: ['1', 'Lind, Bo', '80'] }]);
  });

  it('keep a quotation mark within a cell that does not begin with one', () => {
    expect(rowsOf('5" score,1', ',')).toEqual([{ line: 1, cells: ['5" score', '1'] }]);
  });

  it('are none where a line is blank or has nothing but delimiters', () => {
    expect(rowsOf('\n;;\n \na;\n', ';')).toEqual([{ line: 4, cells: ['a', ''] }]);
    expect(rowsOf('', ';')).toEqual([]);
  });

  it.each([
    ['never closes', 'a;b\n1;"Lesson\n2;x'],
    ['closes before its cell ends', 'a;b\n1;"Les"son\n2;x'],
  ])('are not read where a quotation mark %s', (_, text) => {
    expect(rowsOf(text, ';')).toMatchObject({
      code: 'bank/open-quotation',
      sentence: expect.stringContaining('The quotation mark in line 2'),
    });
  });

  it('come back from whatever is written by RFC 4180', () => {
    const cell = fc.string({ unit: fc.constantFrom('a', 'ü', '"', ';', ',', '\t', '\n', '\r\n', ' ') });
    const table = fc.array(
      fc.array(
        cell.map((text) => text.trim()),
        { minLength: 2, maxLength: 4 },
      ),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(table, fc.constantFrom(...DELIMITERS), (cells, delimiter) => {
        const quote = (text: string) => `"${text.replaceAll('"', '""')}"`;
        const text = cells.map((row) => row.map(quote).join(delimiter)).join('\r\n');
        const filled = cells.filter((row) => row.some((one) => one !== ''));
        expect(granted(rowsOf(text, delimiter)).map((row) => row.cells)).toEqual(filled);
      }),
    );
  });
});

describe('the delimiter', () => {
  it.each([
    ['semicolons beside German sums', 'Datum;Name;Betrag\n1.1.2026;Aurich;80,00\n2.1.2026;Lind;90,00\n', ';'],
    [
      'commas beside English sums',
      'Date,Name,Amount\n1/1/2026,Aurich,80.00\n1/2/2026,"Lind; Bo",90.00\n',
      ',',
    ],
    ['tabulators', 'Date\tName\tAmount\n1/1/2026\tAurich, Ines\t80.00\n', '\t'],
    [
      'semicolons under lines about the account',
      'Account, owner\nR. Player\n\na;b;c\n1;2,0;3\n1;2,0;3\n',
      ';',
    ],
    ['nothing to tell it by', 'Date\n', ';'],
  ])('is told by %s', (_, text, delimiter) => {
    expect(delimiterOf(text)).toBe(delimiter);
  });
});
