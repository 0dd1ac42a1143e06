import { describe, expect, it } from 'vitest';
import { type DateOrder, type DecimalMark, dayIn, sumIn } from './cells.ts';

describe('a day in a cell', () => {
  it.each<[string, DateOrder, string | undefined]>([
    ['25.11.2026', 'day month year', '2026-11-25'],
    ['5.1.26', 'day month year', '2026-01-05'],
    ['25/11/2026', 'day month year', '2026-11-25'],
    ['25-11-2026 09:30', 'day month year', '2026-11-25'],
    ['11/25/26', 'month day year', '2026-11-25'],
    ['Nov 25, 2026', 'month day year', '2026-11-25'],
    ['25 Nov 2026', 'day month year', '2026-11-25'],
    ['25-Mar-26', 'day month year', '2026-03-25'],
    ['25. März 2026', 'day month year', '2026-03-25'],
    ['3 août 2026', 'day month year', '2026-08-03'],
    ['7 févr. 2026', 'day month year', '2026-02-07'],
    ['2026-11-25', 'year month day', '2026-11-25'],
    ['2026-11-25T23:59:00Z', 'year month day', '2026-11-25'],
    ['20261125', 'year month day', '2026-11-25'],
    ['31.11.2026', 'day month year', undefined],
    ['25.11.2026', 'month day year', undefined],
    ['11/25/2026', 'day month year', undefined],
    ['25.11.', 'day month year', undefined],
    ['25.11.126', 'day month year', undefined],
    ['Total', 'day month year', undefined],
    ['', 'year month day', undefined],
  ])('“%s” as %s is %s', (cell, order, day) => {
    expect(dayIn(cell, order)?.toString()).toBe(day);
  });
});

describe('a sum in a cell', () => {
  it.each<[string, DecimalMark, string | undefined, string | undefined]>([
    ['80,00', ',', '80.00', undefined],
    ['-1.234,50', ',', '-1234.50', undefined],
    ['1 234 567,5', ',', '1234567.5', undefined],
    ['1\u202f234,50 €', ',', '1234.50', 'EUR'],
    ["1'234.50 CHF", '.', '1234.50', 'CHF'],
    ['1,234.50', '.', '1234.50', undefined],
    ['£12', '.', '12', 'GBP'],
    ['$ 12.5', '.', '12.5', undefined],
    ['USD -12.50', '.', '-12.50', 'USD'],
    ['\u221212.50', '.', '-12.50', undefined],
    ['12.50-', '.', '-12.50', undefined],
    ['(12.50)', '.', '-12.50', undefined],
    ['+.5', '.', '0.5', undefined],
    ['1.234', ',', '1234', undefined],
    ['1.234', '.', '1.234', undefined],
  ])('“%s” with “%s” before the decimals is %s %s', (cell, mark, decimal, code) => {
    expect(sumIn(cell, mark)).toEqual({ decimal, ...(code && { code }) });
  });

  it.each<[string, DecimalMark]>([
    ['', '.'],
    ['-', '.'],
    ['EUR', '.'],
    ['eighty', '.'],
    ['80,00', '.'],
    ['80.00', ','],
    ['1.23.456', ','],
    ['1.234.50', ','],
    ["1'234 567.00", '.'],
    ['--5', '.'],
    ['5 of 10', '.'],
    ['25.11.2026', '.'],
    ['12.50 DR', '.'],
  ])('“%s” with “%s” before the decimals is none', (cell, mark) => {
    expect(sumIn(cell, mark)).toBeUndefined();
  });
});
