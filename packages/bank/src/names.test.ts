import { describe, expect, it } from 'vitest';
import { namesAlike, nameWords } from './names.ts';

const alike = (one: string, other: string) => namesAlike(nameWords(one), nameWords(other));

describe('two names', () => {
  it.each([
    ['Ines Aurich', 'AURICH, INES'],
    ['Ines Aurich', 'Frau Dr. Ines Aurich'],
    ['Ines Aurich', 'I. Aurich'],
    ['Ines Aurich', 'Aurich'],
    ['I. Ilse Aurich', 'Ilse Ida Aurich'],
    ['Ines Aurich', 'Ines und Tilo Aurich'],
    ['Jörg Müller', 'Joerg Mueller'],
    ['Jörg Müller', 'JORG MULLER'],
    ['Søren Łysiak', 'Soren Lysiak'],
    ['Straße, Änne', 'Aenne Strasse'],
    ['Kammermusikverein Ostermünde e. V.', 'Kammermusikverein Osterm'],
    ['Алиса Норд', 'НОРД АЛИСА'],
  ])('%s and %s are alike', (one, other) => {
    expect([alike(one, other), alike(other, one)]).toEqual([true, true]);
  });

  it.each([
    ['Ines Aurich', 'Tilo Aurich'],
    ['Ines Aurich', 'Ines Lind'],
    ['Ines Aurich', 'I. A.'],
    ['Ines Aurich', 'Aur'],
    ['Ines Ines', 'Ines Aurich'],
    ['Ines Aurich', ''],
    ['', ''],
    ['Herr', 'Herr Lind'],
  ])('%s and %s are not', (one, other) => {
    expect([alike(one, other), alike(other, one)]).toEqual([false, false]);
  });
});
