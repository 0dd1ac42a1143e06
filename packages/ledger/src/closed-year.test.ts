import { refused } from '@colla/refusal';
import { expect, it } from 'vitest';
import { openOn } from './closed-year.ts';
import { day } from './told.fixture.ts';

it.each([
  ['the last day of what is closed', '03-31', false],
  ['the day after', '04-01', true],
  ['a day long before', '01-01', false],
])('in books that are closed up to the end of March, %s', (_, on, open) => {
  expect(openOn(day(on), day('03-31')) === true).toBe(open);
});

it('a closed year says from which day on something can be entered', () => {
  const answer = openOn(day('03-30'), day('03-31'));
  expect(answer).toMatchObject({ code: 'ledger/closed-year', field: '/on' });
  expect(refused(answer) && answer.sentence).toBe(
    'The books are closed up to 2026-03-31, and 2026-03-30 is within that. Give a day from 2026-04-01 on.',
  );
});

it('books that were never closed take every day', () => {
  expect(openOn(day('01-01'), undefined)).toBe(true);
});
