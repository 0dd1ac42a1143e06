import { granted } from '@colla/refusal';
import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import { creditorReference } from './creditor-reference.ts';
import { readIban } from './iban.ts';
import published from './published-values.json' with { type: 'json' };
import { scanToPay } from './scan-to-pay.ts';
import { type Square, squareOf } from './square.ts';

const account = {
  iban: granted(readIban('AT611904300234573201')),
  reference: granted(creditorReference('2026-0042')),
};

describe('the square on a euro invoice', () => {
  it('is read back by a decoder of other authors, line by line as the guideline has it', () => {
    const payload = published.scanToPay.lines.join('\n');
    expect(scan(squareOf(payload))).toEqual(published.scanToPay.lines);
  });

  it('keeps every letter of a name', () => {
    const name = 'Änne Łysiak & Søren Ó Néill, Церковь';
    expect(scan(squareOf(granted(scanToPay({ ...account, name, cents: 8000n }))))[5]).toBe(name);
  });

  it('is of version 13 at most, 69 fields a side, however long the name', () => {
    const longest = granted(scanToPay({ ...account, name: '𝄞'.repeat(70), cents: 99_999_999_999n }));
    expect(squareOf(longest)).toHaveLength(4 + 69 + 4);
    expect(scan(squareOf(longest)).at(-1)).toBe(account.reference);
  });

  it('corrects errors at level M: it is read with fields that are covered', () => {
    const square = squareOf(published.scanToPay.lines.join('\n'));
    const middle = Math.floor(square.length / 2);
    const near = (place: number) => Math.abs(place - middle) <= 2;
    const covered = square.map((row, y) => row.map((dark, x) => (near(x) && near(y) ? false : dark)));
    expect(scan(covered)).toEqual(published.scanToPay.lines);
  });
});

/** The lines that a camera would read, each field four dots wide. */
function scan(square: Square): string[] {
  const dots = 4;
  const width = square.length * dots;
  const place = (at: number) => Math.floor(at / dots);
  const picture = new Uint8ClampedArray(width * width * 4).fill(255);
  for (let y = 0; y < width; y += 1) {
    for (let x = 0; x < width; x += 1) {
      if (square[place(y)]?.[place(x)]) picture.fill(0, (y * width + x) * 4, (y * width + x) * 4 + 3);
    }
  }
  return jsQR(picture, width, width)?.data.split('\n') ?? [];
}
