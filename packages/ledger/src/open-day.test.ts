import { refused } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { openOn } from './open-day.ts';
import { day } from './told.fixture.ts';

const today = day('11-25');
const sentence = (answer: ReturnType<typeof openOn>) => refused(answer) && answer.sentence;

describe('books that are closed up to the end of March', () => {
  const closedThrough = day('03-31');

  it.each([
    ['the last day of what is closed', '03-31', false],
    ['the day after', '04-01', true],
    ['a day long before', '01-01', false],
    ['today', '11-25', true],
  ])('take something on %s: %s', (_, on, open) => {
    expect(openOn(day(on), { closedThrough, today }) === true).toBe(open);
  });

  it('say from which day on they take it', () => {
    const answer = openOn(day('03-30'), { closedThrough, today });
    expect(answer).toMatchObject({ code: 'ledger/closed-year', field: '/on' });
    expect(sentence(answer)).toBe(
      'The books are closed up to 2026-03-31, and 2026-03-30 is within that. Give a day from 2026-04-01 on.',
    );
  });
});

describe('books that were never closed', () => {
  it('take every day that has come', () => {
    expect(openOn(day('01-01'), { today })).toBe(true);
    expect(openOn(today, { today })).toBe(true);
  });

  it('take nothing for tomorrow', () => {
    const answer = openOn(day('11-26'), { today });
    expect(answer).toMatchObject({ code: 'ledger/ahead', field: '/on' });
    expect(sentence(answer)).toBe('Today is 2026-11-25, and 2026-11-26 has not come yet. Correct the day.');
  });
});
