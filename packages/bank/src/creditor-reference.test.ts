import { Refusal } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { creditorReference, creditorReferencesIn, readCreditorReference } from './creditor-reference.ts';
import published from './published-values.json' with { type: 'json' };

const { creditorReferences } = published;

describe(`creditor references, as published (${creditorReferences.source})`, () => {
  it.each(creditorReferences.read)('$printed is right: $valid', ({ printed, valid }) => {
    expect(typeof readCreditorReference(printed) === 'string').toBe(valid);
  });

  it.each(creditorReferences.made)('the number $number is paid under $reference', ({ number, reference }) => {
    expect(creditorReference(number)).toBe(reference);
    expect(readCreditorReference(reference)).toBe(reference);
  });
});

describe('a creditor reference', () => {
  it('is made of the letters and figures of a number alone', () => {
    expect(creditorReference('2026-0042')).toBe('RF8820260042');
  });

  // 2026 0042 has the check figures 88, 5390 0754 7034 has 18: both are among the values above.
  it.each([
    ['recital may, rf88 2026 0042 with thanks', ['RF8820260042']],
    ['INV RF8820260042', ['RF8820260042']],
    ['RF88-2026-0042/RF18 5390 0754 7034', ['RF8820260042', 'RF18539007547034']],
    ['Ref. RF 88 2026 0042, again RF8820260042', ['RF8820260042']],
    ['RF79 KDFL O48O JW9T SCUP 7L', ['RF79KDFLO48OJW9TSCUP7L']],
    ['RF89 2026 0042', []],
    ['surf88 2026 0042', []],
    ['', []],
  ])('is found among the words of a payer: %s', (words, references) => {
    expect(creditorReferencesIn(words)).toEqual(references);
  });

  it('cannot be made of a number without letters or figures, or of one that is too long', () => {
    for (const number of ['—', '1234567890123456789012'])
      expect(creditorReference(number)).toMatchObject({ code: 'bank/no-reference' });
  });

  it('is told from anything else', () => {
    for (const printed of ['2026-0042', 'RF88', 'RF88 1234567890123456789012', 'RF8É2026'])
      expect(readCreditorReference(printed)).toMatchObject({
        sentence: expect.stringContaining('that is RF, two check figures, and up to 21 letters and figures'),
      });
  });

  it('with two figures exchanged is refused in a sentence', () => {
    expect(readCreditorReference('RF88 2026 0024')).toEqual(
      new Refusal(
        'bank/not-a-reference',
        '“RF88 2026 0024” is not a creditor reference: the check figures after RF do not agree with the rest. Compare it with the document.',
        { printed: 'RF88 2026 0024' },
      ),
    );
  });
});
