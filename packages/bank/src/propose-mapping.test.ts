import { currency } from '@colla/money';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { readCsv } from './csv.ts';
import type { SumColumns } from './mapping.ts';
import { proposeMapping } from './propose-mapping.ts';

/** What is proposed for a file, the open parts left out. */
function proposed(text: string) {
  return JSON.parse(JSON.stringify(granted(proposeMapping(text)).proposed));
}

describe('a mapping proposed', () => {
  it('by English headings', () => {
    expect(proposed('Date,Name,Description,Amount,Currency\n25/11/2026,Aurich,Lesson,80.00,GBP\n')).toEqual({
      delimiter: ',',
      headings: ['Date', 'Name', 'Description', 'Amount', 'Currency'],
      day: 0,
      dateOrder: 'day month year',
      sum: { signed: 3 },
      decimalMark: '.',
      name: 1,
      words: [2],
      currencyOf: 4,
    });
  });

  it('by German headings under lines about the account', () => {
    const text =
      'Konto;R. Spieler\nZeitraum;November\n\nBuchungstag;Wertstellung;Auftraggeber;Buchungstext;Verwendungszweck;Betrag (EUR)\n25.11.2026;26.11.2026;Aurich;Gutschrift;Probe;1.280,50\n';
    expect(proposed(text)).toMatchObject({
      delimiter: ';',
      day: 0,
      dateOrder: 'day month year',
      sum: { signed: 5 },
      decimalMark: ',',
      name: 2,
      words: [3, 4],
    });
  });

  it('by French headings', () => {
    const text =
      "Date de l'opération;Libellé;Débit;Crédit;Référence\n25/11/2026;Répétition;;80,00;RF8820260042\n26/11/2026;Frais;3,90;;\n";
    expect(proposed(text)).toMatchObject({
      day: 0,
      words: [1],
      sum: { in: 3, out: 2 },
      decimalMark: ',',
      reference: 4,
    });
  });

  it.each<[string, string, SumColumns | undefined]>([
    ['one that has a minus', 'Datum;Betrag;S/H\n25.11.2026;-80,00;S\n', { signed: 1 }],
    [
      'one that has none beside a side',
      'Datum;Betrag;S/H\n25.11.2026;80,00;H\n',
      { unsigned: 1, side: 2, inWord: 'H', outWord: 's' },
    ],
    ['one beside a side in words nobody knows', 'Datum;Betrag;S/H\n25.11.2026;80,00;ja\n', undefined],
    ['one of two alone', 'Datum;Gutschrift\n25.11.2026;80,00\n', undefined],
  ])('for sums: %s', (_, text, sum) => {
    expect(granted(proposeMapping(text)).proposed.sum).toEqual(sum);
  });

  it('leaves open what the file does not tell', () => {
    // The third of April or the fourth of March; one thousand two hundred and thirty-four, or one and a bit.
    expect(proposed('Date;Amount\n03/04/2026;1.234\n')).toEqual({
      delimiter: ';',
      headings: ['Date', 'Amount'],
      day: 0,
      sum: { signed: 1 },
      words: [],
    });
  });

  it('by headings in capitals, three letters of which may be no currency', () => {
    expect(proposed('DATE;NOM;MONTANT EUR\n25/11/2026;Aurich;80,00\n')).toMatchObject({
      day: 0,
      name: 1,
      sum: { signed: 2 },
    });
  });

  it('leaves all open where no row has headings, though one word be of them', () => {
    expect(proposed('25.11.2026;Gutschrift;80,00\n')).toEqual({ delimiter: ';', headings: [], words: [] });
  });

  it('with the currency said is all that is needed to read the file', () => {
    const text = 'Date,Name,Amount\n2026-11-25,Aurich,80.00\n';
    const { day, sum, dateOrder, decimalMark, ...rest } = granted(proposeMapping(text)).proposed;
    if (day === undefined || !sum || !dateOrder || !decimalMark) throw new Error('something was left open');
    const mapping = { ...rest, day, sum, dateOrder, decimalMark, currency: granted(currency('EUR')) };
    expect(granted(readCsv(text, mapping, 'A')).entries).toMatchObject([{ amount: 8000n, name: 'Aurich' }]);
  });

  it('is by the delimiter that the user says, where the best guess was wrong', () => {
    expect(granted(proposeMapping('Date;Amount,x\n', ',')).proposed).toMatchObject({
      delimiter: ',',
      headings: [],
    });
  });
});
