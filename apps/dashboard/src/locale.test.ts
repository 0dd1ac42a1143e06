import { beforeEach, describe, expect, test } from 'vitest';
import { words } from './catalogue/words.ts';
import { readTyped, sayDay, sayDaysIn, sayHours, sayMoney, saySpan, speakIn } from './locale.ts';

const call = {
  start: '2026-03-14T19:30:00+00:00[Europe/London]',
  end: '2026-03-14T21:00:00+00:00[Europe/London]',
};

describe('in British English', () => {
  beforeEach(() => speakIn('en-GB'));

  test('a day, a span, hours and money are written as one reads them there', () => {
    expect([sayDay(call.start), saySpan(call), sayHours(90), sayMoney('-1234.5', 'GBP')]).toEqual([
      '14 Mar 2026',
      '19:30–21:00',
      '1.50',
      '\u2212£1,234.50',
    ]);
  });
});

test.each([
  ['The quote stood until 2026-10-31. Quote again.', 'The quote stood until 31 Oct 2026. Quote again.'],
  ['“from” is not a day; write it as 2026-03-14.', '“from” is not a day; write it as 2026-03-14.'],
  ['“2026-02-30” is not a day.', '“2026-02-30” is not a day.'],
])('of what the books answer, “%s” is said “%s”', (sentence, said) => {
  speakIn('en-GB');
  expect(sayDaysIn(sentence)).toBe(said);
});

describe('in Austrian German', () => {
  beforeEach(() => speakIn('de-AT'));

  test('a comma parts the decimals, typed and read', () => {
    expect([sayHours(90), readTyped('1.234,50', 'EUR')]).toEqual(['1,50', '1234.50']);
  });
});

test('an evening in another zone is told by the clock of its place', () => {
  speakIn('en-GB');
  expect(
    saySpan({
      start: '2026-07-01T19:30:00-05:00[America/Chicago]',
      end: '2026-07-01T21:00:00-05:00[America/Chicago]',
    }),
  ).toBe('19:30–21:00');
});

describe('a text with a count', () => {
  beforeEach(() => speakIn('en-GB'));
  const text = words({ calls: { one: '{count} call at {place}', other: '{count} calls at {place}' } });

  test.each([
    [0, '0 calls at Aldbury'],
    [1, '1 call at Aldbury'],
    [2000, '2,000 calls at Aldbury'],
  ])('of %i reads “%s”', (count, read) => {
    expect(text('calls', { count, place: 'Aldbury' })).toBe(read);
  });
});
