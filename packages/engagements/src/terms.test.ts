import { Temporal } from '@colla/calendar';
import { expect, it } from 'vitest';
import { termsApart } from './terms.ts';

const term = (name: string, from: string, to: string) => ({
  name,
  from: Temporal.PlainDate.from(from),
  to: Temporal.PlainDate.from(to),
});
const autumn = term('autumn', '2026-09-14', '2026-12-12');

it('terms follow one another in any order, under one name year after year', () => {
  const terms = [
    term('spring', '2027-01-11', '2027-03-27'),
    autumn,
    term('autumn', '2025-09-15', '2025-12-13'),
  ];
  expect(termsApart(terms)).toBe(terms);
});

it('a term may begin on the day after another ends', () => {
  expect(termsApart([autumn, term('Advent', '2026-12-13', '2026-12-24')])).toHaveLength(2);
});

it.each([
  ['begins on the last day of another', term('Advent', '2026-12-12', '2026-12-24'), '2026-12-12', '/1/from'],
  ['ends on the first day of another', term('summer', '2026-06-01', '2026-09-14'), '2026-09-14', '/1/from'],
  ['lies within another', term('half', '2026-10-26', '2026-10-30'), '2026-10-26', '/1/from'],
])('a term that %s is refused, and the day they share is named', (_, other, day, field) => {
  expect(termsApart([autumn, other])).toMatchObject({
    code: 'organisations/terms-overlap',
    sentence: `“autumn” and “${other.name}” both hold ${day}, and a day is of one term only. Let one end before the other begins.`,
    field,
  });
});

it('a term that ends before it begins is refused', () => {
  expect(termsApart([term('autumn', '2026-12-12', '2026-09-14')])).toMatchObject({
    code: 'calendar/season-ends-early',
    field: '/0/to',
  });
});
