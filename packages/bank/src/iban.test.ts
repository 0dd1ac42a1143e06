import { describe, expect, it } from 'vitest';
import { inFours } from './check.ts';
import { looksLikeIban, readIban } from './iban.ts';
import published from './published-values.json' with { type: 'json' };

const { ibans } = published;

describe(`account numbers, as published (${ibans.source})`, () => {
  it.each(ibans.read)('$iban is right: $valid', ({ iban, valid }) => {
    expect(typeof readIban(iban) === 'string').toBe(valid);
  });
});

describe('an account number', () => {
  it('is read as printed and printed in fours', () => {
    expect(readIban('de89 3704 0044 0532 0130 00')).toBe('DE89370400440532013000');
    expect(inFours('DE89370400440532013000')).toBe('DE89 3704 0044 0532 0130 00');
    expect(inFours('DK5000400440116243')).toBe('DK50 0040 0440 1162 43');
  });

  // One slip each of the German number above.
  it.each([
    ['DE98 3704 0044 0532 0130 00', 'its check figures do not agree with the rest'],
    ['DE89 3704 0044 0532 0130 0', 'it has 21 letters and figures, which is not the length of DE'],
    ['DE89 3704 0044 0532 0130 0A', 'a letter stands where DE has a figure'],
    ['ZZ89 3704 0044 0532 0130 00', 'it begins with no country that has them'],
  ])('%s is refused: %s', (printed, why) => {
    expect(readIban(printed)).toMatchObject({
      code: 'bank/not-an-iban',
      sentence: expect.stringContaining(why),
    });
  });

  it('is told from other lines of how to pay', () => {
    expect(looksLikeIban('DE98 3704 0044 0532 0130 00')).toBe(true);
    for (const line of ['Sort code 00-00-00', 'Account 12345678', 'Cheques to R. Player', '12 Weir Lane'])
      expect(looksLikeIban(line)).toBe(false);
  });
});
