import { currency } from '@colla/money';
import { granted, refused } from '@colla/refusal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readCsv } from './csv.ts';
import type { Mapping } from './mapping.ts';
import { textOf } from './text.ts';

const EURO = granted(currency('EUR'));
const POUND = granted(currency('GBP'));

const GERMAN = 'Buchungstag;Auftraggeber;Verwendungszweck;Betrag;Saldo';
const german: Mapping = {
  delimiter: ';',
  headings: GERMAN.split(';'),
  dateOrder: 'day month year',
  decimalMark: ',',
  day: 0,
  sum: { signed: 3 },
  name: 1,
  words: [2],
  currency: EURO,
};

/** What is read of some rows under the German headings. */
function read(rows: string, mapping: Mapping = german) {
  return granted(readCsv(`${mapping.headings.join(';')}\n${rows}`, mapping, 'Giro'));
}

describe('rows of a bank', () => {
  it('in Latin-1 with semicolons, under lines about the account, are entries', () => {
    const text = `Konto;Giro\nvon;1.11.2026\n\n${GERMAN}\n25.11.2026;M\u00fcller, J\u00f6rg;"Probe ""M\u00e4rz""";1.280,50;2.000,00\n26.11.2026;;Geb\u00fchr;-3,90;1.996,10\n`;
    const file = Uint8Array.from(text, (letter) => letter.charCodeAt(0));
    const { account, entries, pending } = granted(readCsv(granted(textOf(file)), german, 'Giro'));
    expect([account, pending]).toEqual(['Giro', 0]);
    expect(entries.map(({ identity: _, on, ...entry }) => ({ on: String(on), ...entry }))).toEqual([
      {
        on: '2026-11-25',
        amount: 128050n,
        currency: EURO,
        name: 'Müller, Jörg',
        words: 'Probe "März"',
        references: [],
        reversal: false,
      },
      { on: '2026-11-26', amount: -390n, currency: EURO, words: 'Gebühr', references: [], reversal: false },
    ]);
  });

  it('with one column for what came in and one for what went out have the sign of theirs', () => {
    const mapping: Mapping = {
      ...german,
      delimiter: ',',
      headings: ['Date', 'Details', 'Paid out', 'Paid in'],
      dateOrder: 'month day year',
      decimalMark: '.',
      sum: { in: 3, out: 2 },
      words: [1],
      currency: POUND,
    };
    const text =
      'Date,Details,Paid out,Paid in\n11/25/2026,Aurich,,"1,280.50"\n11/25/2026,Fee,3.90,\n11/25/2026,Fee,-3.90,0.00\n11/25/2026,Nothing,0.00,0.00\n11/25/2026,Nothing,0.00,\n';
    const { entries } = granted(readCsv(text, mapping, 'Current'));
    expect(entries.map(({ amount }) => amount)).toEqual([128050n, -390n, -390n, 0n, 0n]);
  });

  it('with a word for the side have the sign of the word', () => {
    const sum = { unsigned: 3, side: 4, inWord: 'H', outWord: 'S' };
    const { entries } = read('25.11.2026;Aurich;Probe;80,00;H\n25.11.2026;Bank;Gebühr;3,90;S', {
      ...german,
      sum,
    });
    expect(entries.map(({ amount }) => amount)).toEqual([8000n, -390n]);
  });

  it('are in the currency of their own column, else of the account', () => {
    const { entries } = read('25.11.2026;A;x;80,00;USD\n25.11.2026;A;x;80;jpy\n25.11.2026;A;x;80,00;', {
      ...german,
      currencyOf: 4,
    });
    expect(entries.map(({ amount, currency }) => `${amount} ${currency}`)).toEqual([
      '8000 USD',
      '80 JPY',
      '8000 EUR',
    ]);
  });

  it('carry their reference and the bank’s own name', () => {
    const { entries } = read('25.11.2026;B77;RF88 2026 0042;80,00;', {
      ...german,
      name: undefined,
      words: [],
      reference: 2,
      bankId: 1,
    });
    expect(entries).toMatchObject([{ words: '', references: ['RF88 2026 0042'], bankId: 'B77' }]);
  });

  it('are found under headings in whatever letters and capitals', () => {
    const mapping: Mapping = { ...german, headings: ['ΗΜΕΡΑ', 'ΟΝΟΜΑ', 'ΛΟΓΟΣ', 'ΠΟΣΟ'] };
    const text = 'Α;Β;Γ;Δ\nημερα;ονομα;λογος;ποσο\n25.11.2026;A;x;80,00\n';
    expect(granted(readCsv(text, mapping, 'Giro')).entries).toMatchObject([{ amount: 8000n }]);
  });

  it('of a file without headings are read from the first line', () => {
    const { entries } = granted(
      readCsv('25.11.2026;Aurich;Probe;80,00', { ...german, headings: [] }, 'Giro'),
    );
    expect(entries).toMatchObject([{ amount: 8000n, name: 'Aurich' }]);
  });
});

describe('the identity of a row', () => {
  const identities = (rows: string, mapping?: Mapping) =>
    read(rows, mapping).entries.map(({ identity }) => identity);
  const lesson = '25.11.2026;Aurich;Stunde;80,00;2.000,00';

  it('is the same whatever the balance runs to, and whatever columns are mapped', () => {
    const first = identities(lesson);
    for (const balance of ['80,00', '1.080,00 EUR', '1,080.00 EUR'])
      expect(identities(`25.11.2026;Aurich;Stunde;80,00;${balance}`)).toEqual(first);
    expect(identities(lesson, { ...german, name: undefined, words: [1, 2] })).toEqual(first);
  });

  it('tells two like rows of one day apart', () => {
    expect(new Set(identities(`${lesson}\n${lesson}`)).size).toBe(2);
  });
});

describe('rows that are no entries', () => {
  it.each([
    ['31.11.2026;A;x;80,00;', '“31.11.2026” is no day written as day month year'],
    ['25.11.2026;A;x;eighty;', '“eighty” is no sum'],
    ['25.11.2026;A;x;80.00;', '“80.00” is no sum'],
    ['25.11.2026;A;x;80,005;', '“80,005” is no sum in EUR'],
    ['25.11.2026;A;x;;', '“” is no sum'],
    ['25.11.2026;A;x', 'there are 3 cells under 5 headings'],
    ['25.11.2026;A;x;80,00', 'there are 4 cells under 5 headings'],
    ['25.11.2026;A;x;y;80,00;7', 'there are 6 cells under 5 headings'],
    ['25.11.2026;A;x;80 EUX;', '“EUX” is no currency that ISO 4217 lists'],
  ])('“%s”: in line 3, %s', (row, why) => {
    const answer = readCsv(`${GERMAN}\n24.11.2026;A;x;80,00;\n${row}`, german, 'Giro');
    expect(answer).toMatchObject({ code: 'bank/wrong-rows', facts: { rows: 1 } });
    expect(refused(answer) && answer.sentence).toBe(
      `Nothing of the file was read: in line 3, ${why}. Say again which column is which, or take lines that are no entries out of the file.`,
    );
  });

  it('of two columns have a sum in one of them', () => {
    const mapping: Mapping = { ...german, sum: { in: 3, out: 4 } };
    const answer = readCsv(
      `${GERMAN}\n25.11.2026;A;x;;\n25.11.2026;A;x;80,00;3,90\n25.11.2026;A;x;-80,00;\n25.11.2026;A;x;;much`,
      mapping,
      'Giro',
    );
    expect(refused(answer) && answer.sentence).toBe(
      'Nothing of the file was read: in line 2, no sum stands in either column; in line 3, a sum came in, “80,00”, and another went out, “3,90”; in line 4, “-80,00” came in with a minus; and so in 1 more. Say again which column is which, or take lines that are no entries out of the file.',
    );
  });

  it('of a side have one of its two words, and no minus besides', () => {
    const sum = { unsigned: 3, side: 4, inWord: 'H', outWord: 'S' };
    const answer = readCsv(
      `${GERMAN}\n25.11.2026;A;x;80,00;X\n25.11.2026;A;x;-80,00;S`,
      { ...german, sum },
      'Giro',
    );
    expect(refused(answer) && answer.sentence).toContain(
      'in line 2, “X” is neither “H” nor “S”; in line 3, “-80,00” has a minus beside “S”.',
    );
  });

  it('say one currency, not two', () => {
    const answer = readCsv(`${GERMAN}\n25.11.2026;A;x;80,00 USD;EUR`, { ...german, currencyOf: 4 }, 'Giro');
    expect(refused(answer) && answer.sentence).toContain(
      'in line 2, the sum is in USD, and the column of currencies says “EUR”.',
    );
  });

  it('break off in the middle of a sum', () => {
    const mapping: Mapping = { ...german, headings: ['Tag', 'Name', 'Zweck', 'Betrag'] };
    const whole = 'Tag;Name;Zweck;Betrag\n24.11.2026;A;x;80,00\n25.11.2026;A;x;90,50';
    const rounded = 'Tag;Name;Zweck;Betrag\n24.11.2026;A;x;80,00\n25.11.2026;A;x;90\n';
    const balanced = `${GERMAN}\n24.11.2026;A;x;80,00;100,00\n25.11.2026;A;x;90,50;1`;
    for (const file of [whole, rounded])
      expect(granted(readCsv(file, mapping, 'Giro')).entries).toHaveLength(2);
    expect(granted(readCsv(balanced, german, 'Giro')).entries).toHaveLength(2);
    for (const cut of [1, 2, 3, 4]) {
      expect(readCsv(whole.slice(0, -cut), mapping, 'Giro')).toMatchObject({
        code: 'bank/wrong-rows',
        sentence: expect.stringContaining('the last sum breaks off'),
      });
    }
  });

  it('cut anywhere below the first two are refused, or read as far as they go', () => {
    const mapping: Mapping = { ...german, headings: ['Tag', 'Name', 'Zweck', 'Betrag'] };
    const row = (on: number) => `${on}.11.2026;Aurich, Ines;"Probe ""${on}""";80,${on}\r\n`;
    const text = `Tag;Name;Zweck;Betrag\r\n${[11, 12, 13, 14].map(row).join('')}`;
    const whole = granted(readCsv(text, mapping, 'Giro')).entries;
    const least = text.length - 2 * row(13).length;
    fc.assert(
      fc.property(fc.integer({ min: least, max: text.length }), (length) => {
        const cut = readCsv(text.slice(0, length), mapping, 'Giro');
        if (!refused(cut)) expect(cut.entries).toEqual(whole.slice(0, cut.entries.length));
      }),
    );
  });

  it('stand under other headings than remembered', () => {
    expect(readCsv('Datum;Betrag\n25.11.2026;80,00', german, 'Giro')).toMatchObject({
      code: 'bank/other-columns',
      sentence:
        'The file has other columns than the last one of this account, which had “Buchungstag”, “Auftraggeber”, “Verwendungszweck”, “Betrag”, “Saldo”. Say again which column is which.',
    });
  });
});
