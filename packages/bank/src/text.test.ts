import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { LARGEST_FILE, textOf } from './text.ts';

const utf8 = (text: string) => new TextEncoder().encode(text);
/** One byte a letter, as Latin-1 has them up to 255. */
const bytes = (text: string) => Uint8Array.from(text, (letter) => letter.charCodeAt(0));

describe('the letters of a file', () => {
  it.each([
    ['UTF-8', utf8('Betrag;Müller;5,00 €')],
    ['UTF-8 with its mark', Uint8Array.of(0xef, 0xbb, 0xbf, ...utf8('Betrag;Müller;5,00 €'))],
    ['UTF-16, little end first', Uint8Array.of(0xff, 0xfe, ...utf16('Betrag;Müller;5,00 €', 0))],
    ['UTF-16, big end first', Uint8Array.of(0xfe, 0xff, ...utf16('Betrag;Müller;5,00 €', 1))],
    // In Windows-1252 € is 128 and ü, as in Latin-1, 252.
    ['Windows-1252', bytes('Betrag;M\u00fcller;5,00 \u0080')],
  ])('are read from %s', (_, file) => {
    expect(textOf(file)).toBe('Betrag;Müller;5,00 €');
  });

  it('of Latin-1 are those of Windows-1252, which has quotation marks besides', () => {
    expect(textOf(bytes('Fran\u00e7oise \u0093Lied\u0094'))).toBe('Françoise “Lied”');
  });

  it('are those that an XML file says, where it is not UTF-8', () => {
    // In ISO 8859-2 Ł is 163 and ó 243; in Latin-1 163 is £.
    const polish = (letters: string) =>
      bytes(`<?xml version="1.0" encoding="${letters}"?><a>\u00a3\u00f3</a>`);
    expect(granted(textOf(polish('ISO-8859-2')))).toContain('<a>Łó</a>');
    expect(granted(textOf(polish('ISO-8859-1')))).toContain('<a>£ó</a>');
    expect(granted(textOf(polish('nonesuch')))).toContain('<a>£ó</a>');
  });

  it('of a long file in Latin-1 are all read', () => {
    expect(textOf(bytes('\u00fc'.repeat(20_000)))).toBe('ü'.repeat(20_000));
  });
});

describe('a file that is no text', () => {
  it.each([
    ['is empty', Uint8Array.of(), 'bank/empty-file'],
    ['is blank', utf8(' \r\n'), 'bank/empty-file'],
    ['is a picture', Uint8Array.of(0x89, 0x50, 0x4e, 0x47, 0, 0, 0, 13), 'bank/not-text'],
    ['is too large', new Uint8Array(LARGEST_FILE + 1), 'bank/too-large'],
  ])('%s', (_, file, code) => {
    expect(textOf(file)).toMatchObject({ code });
  });

  it('is told in a sentence what to do instead', () => {
    expect(textOf(new Uint8Array(LARGEST_FILE + 1))).toMatchObject({
      sentence:
        'The file is larger than 10 MB. Take a shorter time, a month or a year, and bring in one file after another.',
    });
  });
});

function utf16(text: string, high: 0 | 1): number[] {
  return [...text].flatMap((letter) => {
    const code = letter.charCodeAt(0);
    return high === 0 ? [code & 255, code >> 8] : [code >> 8, code & 255];
  });
}
