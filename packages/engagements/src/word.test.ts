import { Temporal } from '@colla/calendar';
import { Refusal } from '@colla/refusal';
import { expect, it } from 'vitest';
import { heard } from './word.ts';

const at = (text: string, zone = 'Europe/London') => Temporal.ZonedDateTime.from(`${text}[${zone}]`);
const now = at('2026-02-02T10:00');

it.each([
  ['this morning', at('2026-02-02T08:00')],
  ['later today, by a clock that goes before ours', at('2026-02-02T10:05')],
  ['tomorrow in Auckland, where it is today here', at('2026-02-03T11:00', 'Pacific/Auckland')],
])('word of %s has come', (_, moment) => {
  const word = { at: moment, by: 'payer' };
  expect(heard(word, now)).toBe(word);
});

it('word of tomorrow has not', () => {
  expect(heard({ at: at('2026-02-03T00:00') }, now)).toMatchObject({
    code: 'engagements/word-ahead',
    sentence: 'Today is 2026-02-02, and word of 2026-02-03 has not come yet. Correct the day it came.',
    field: '/on',
  });
});

it('a word that could not be read stays what it is', () => {
  const unread = new Refusal('calendar/no-such-day', 'There is no such day.');
  expect(heard(unread, now)).toBe(unread);
});
