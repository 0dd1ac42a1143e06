import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { day } from './engaged.fixture.ts';
import { fileName, invoiceSeries, seriesOf, writeNumber } from './number.ts';

it('an invoice stands in the series of the year it was issued in', () => {
  expect(invoiceSeries(day('12-31'))).toBe('2026');
  expect(writeNumber({ series: '2026', ordinal: 7 })).toBe('2026-0007');
  expect(writeNumber({ series: '2026', ordinal: 12345 })).toBe('2026-12345');
});

it('each kind of document has a series of its own in each year', () => {
  expect(seriesOf('credit note', day('12-31'))).toBe('C2026');
  expect(writeNumber({ series: seriesOf('deposit request', day('01-01')), ordinal: 3 })).toBe('D2026-0003');
  expect(seriesOf('invoice', day('12-31'))).toBe(invoiceSeries(day('12-31')));
  expect(fileName('C2026-0001', 'credit note')).toBe('credit-note-C2026-0001.pdf');
});

describe('a file is named by its number and cannot lead anywhere else', () => {
  it.each([
    ['2026-0007', 'invoice-2026-0007.pdf'],
    ['../../2026-0007', 'invoice-2026-0007.pdf'],
    ['..\\..\\2026', 'invoice-2026.pdf'],
    ['/etc/passwd', 'invoice-etc-passwd.pdf'],
    ['2026/7 (copy).pdf', 'invoice-2026-7-copy-pdf.pdf'],
    ['Für Élise', 'invoice-Fur-Elise.pdf'],
    ['../', 'invoice-document.pdf'],
    ['', 'invoice-document.pdf'],
    ['a\r\nSet-Cookie: b', 'invoice-a-Set-Cookie-b.pdf'],
  ])('%j', (number, name) => {
    expect(fileName(number)).toBe(name);
  });

  it('whatever it holds', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (number) => {
        expect(fileName(number)).toMatch(/^invoice-[A-Za-z0-9]+(-[A-Za-z0-9]+)*\.pdf$/);
      }),
    );
  });
});
