import { readDay } from '@colla/calendar';
import { currency } from '@colla/money';
import { granted } from '@colla/refusal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { entry, message, told } from './camt.fixture.ts';
import { readCamt } from './camt.ts';
import { identified, type Movement } from './entry.ts';

const aurich = entry({ amount: '80.00', payments: [told('Ines Aurich', 'Lesson')] });
const lind = entry({ amount: '80.00', payments: [told('Bo Lind', 'Lesson')] });

/** The identities of a message, in its order. */
function identities(inside: string): string[] {
  return granted(readCamt(message(inside))).flatMap(({ entries }) => entries.map(({ identity }) => identity));
}

describe('the identity of an entry', () => {
  it('is the same when the file is read again, in whatever order', () => {
    expect(identities(lind + aurich).sort()).toEqual(identities(aurich + lind).sort());
  });

  it('tells two like payments of one day apart, and finds them again in a longer file', () => {
    const twice = identities(aurich + aurich);
    expect(new Set(twice).size).toBe(2);
    expect(identities(aurich + lind + aurich)).toEqual(expect.arrayContaining(twice));
  });

  it('counts like payments on through all statements of a file', () => {
    const [first = '', second = ''] = identities(`${aurich}</Stmt><Stmt><Id>S2</Id>${ACCOUNT}${aurich}`);
    expect([JSON.parse(first).at(-1), JSON.parse(second).at(-1)]).toEqual([1, 2]);
  });

  it('is by the bank’s own name for it, whatever the words', () => {
    const named = (words: string) =>
      entry({ amount: '80.00', more: '<AcctSvcrRef>B77</AcctSvcrRef>', payments: [told('Bo Lind', words)] });
    expect(identities(named('Lesson'))).toEqual(identities(named('LESSON')));
    expect(identities(named('Lesson'))).toEqual([
      '["DE89370400440532013000","2026-11-25","8000 EUR","B77",1]',
    ]);
  });

  it('differs by account', () => {
    const movement = movementOf('Lesson');
    expect(identified('A', [movement])).not.toEqual(identified('B', [movement]));
  });

  it('is never shared by two entries of a file, and depends on nothing but what is alike', () => {
    const words = fc.array(fc.constantFrom('a', 'b', '"', 'a,b', '1', ''), { maxLength: 12 });
    fc.assert(
      fc.property(words, (all) => {
        const entries = identified('A', all.map(movementOf));
        expect(new Set(entries.map(({ identity }) => identity)).size).toBe(all.length);
        const turned = identified('A', [...all].reverse().map(movementOf));
        expect(turned.map(({ identity }) => identity).sort()).toEqual(
          entries.map(({ identity }) => identity).sort(),
        );
      }),
    );
  });
});

const ACCOUNT = '<Acct><Id><IBAN>DE89370400440532013000</IBAN></Id></Acct>';

function movementOf(words: string): Movement {
  const sum = { amount: 8000n, currency: granted(currency('EUR')) };
  const on = granted(readDay('2026-11-25'));
  return { entry: { on, ...sum, words, references: [], reversal: false }, told: [words] };
}
