import { describe, expect, it } from 'vitest';
import { granted, type OrRefusal, Refusal, refused } from './refusal.ts';

const late = new Refusal(
  'calls/too-late',
  'Word came after the call began. Mark it missed.',
  { minutes: 5 },
  '/at',
);

/** Halves an even number. */
function half(of: number): OrRefusal<number> {
  return of % 2 === 0
    ? of / 2
    : new Refusal('sums/odd', `${of} cannot be halved. Give an even number.`, { of });
}

describe('the trade says no by a value', () => {
  it('that is told apart from every other value', () => {
    expect(refused(half(6))).toBe(false);
    expect(refused(half(7))).toBe(true);
    expect(refused<unknown>(undefined)).toBe(false);
    expect(refused<unknown>({ code: 'calls/too-late', sentence: 'It only looks like one.' })).toBe(false);
  });

  it('with a code for programs, a sentence for people, and the facts behind both', () => {
    expect(half(7)).toMatchObject({
      code: 'sums/odd',
      sentence: '7 cannot be halved. Give an even number.',
      facts: { of: 7 },
    });
  });

  it('that points at the field, as seen from ever further out', () => {
    const outside = late.at('/0').at('/calls');
    expect(outside.field).toBe('/calls/0/at');
    expect(outside).toMatchObject({ code: late.code, sentence: late.sentence, facts: { minutes: 5 } });
    expect(late.field).toBe('/at');
    expect(new Refusal('sums/odd', 'No.').at('/sum').field).toBe('/sum');
  });
});

describe('where a no would be a broken invariant', () => {
  it('the value is had', () => {
    expect(granted(half(6))).toBe(3);
  });

  it('and a no is loud', () => {
    expect(() => granted(half(7))).toThrow('sums/odd: 7 cannot be halved. Give an even number.');
  });
});
