import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { type Boundary, deadline, inTime, type Notice } from './deadline.ts';

const none = new Set<string>();
const at = (text: string) => Temporal.ZonedDateTime.from(text);

/** A recital on the Sunday in London on which clocks went forward in the night. */
const AFTER_SPRING = at('2027-03-28T10:00[Europe/London]');
/** An exam on a Saturday in June. */
const EXAM = at('2026-06-13T15:00[Europe/London]');

describe('notice runs out', () => {
  it.each<[string, Notice, Temporal.ZonedDateTime, string]>([
    ['48 hours before', { by: 'hours', before: 48 }, EXAM, '2026-06-11T15:00:00+01:00[Europe/London]'],
    // 24 elapsed hours: the night had only 23, so the clock shows nine
    ['24 hours lived', { by: 'hours', before: 24 }, AFTER_SPRING, '2027-03-27T09:00:00+00:00[Europe/London]'],
    ['half an hour before', { by: 'hours', before: 0.5 }, EXAM, '2026-06-13T14:30:00+01:00[Europe/London]'],
    // the whole of Thursday counts, so it ends at the midnight that begins Friday
    ['two days before, whole', { by: 'days', before: 2 }, EXAM, '2026-06-12T00:00:00+01:00[Europe/London]'],
    // Saturday: the two working days before are Friday and Thursday
    ['two working days', { by: 'working-days', before: 2 }, EXAM, '2026-06-12T00:00:00+01:00[Europe/London]'],
    [
      'at eight the evening before',
      { by: 'clock', before: 1, time: '20:00' },
      EXAM,
      '2026-06-12T20:00:00+01:00[Europe/London]',
    ],
    // by the clock it stays eight in the evening, whatever the night does
    [
      'at eight before clocks change',
      { by: 'clock', before: 1, time: '20:00' },
      AFTER_SPRING,
      '2027-03-27T20:00:00+00:00[Europe/London]',
    ],
    // 01:30 does not exist that night; it is read with the offset before the gap (RFC 5545 3.3.5, from memory)
    [
      'at a time clocks skip',
      { by: 'clock', before: 0, time: '01:30' },
      AFTER_SPRING,
      '2027-03-28T02:30:00+01:00[Europe/London]',
    ],
    [
      'on the clock of the place',
      { by: 'clock', before: 1, time: '18:00' },
      at('2026-12-05T09:00[Pacific/Chatham]'),
      '2026-12-04T18:00:00+13:45[Pacific/Chatham]',
    ],
  ])('%s', (_, notice, start, last) => {
    expect(deadline(notice, start, none).toString()).toBe(last);
  });

  it('counts working days past holidays and weekends', () => {
    // Tuesday 29 December: Monday the 28th and Friday the 25th are holidays, so the two are the 24th and the 23rd
    const start = at('2026-12-29T10:00[Europe/London]');
    const holidays = new Set(['2026-12-25', '2026-12-28']);
    expect(deadline({ by: 'working-days', before: 2 }, start, holidays).toString()).toBe(
      '2026-12-24T00:00:00+00:00[Europe/London]',
    );
    expect(deadline({ by: 'working-days', before: 2 }, start, none).toString()).toBe(
      '2026-12-26T00:00:00+00:00[Europe/London]',
    );
  });
});

describe('word of a cancellation', () => {
  const hours24: Notice = { by: 'hours', before: 24 };
  const twoDays: Notice = { by: 'days', before: 2 };

  it.each<[string, string, Notice, Boundary, boolean]>([
    ['a second early is in time', '2026-06-12T14:59:59[Europe/London]', hours24, 'too-late', true],
    [
      'exactly 24 hours before is in time where the terms say so',
      '2026-06-12T15:00[Europe/London]',
      hours24,
      'in-time',
      true,
    ],
    ['and too late where they say that', '2026-06-12T15:00[Europe/London]', hours24, 'too-late', false],
    ['a second late is late', '2026-06-12T15:00:01[Europe/London]', hours24, 'in-time', false],
    [
      'late in the evening of the last day is in time',
      '2026-06-11T23:59:59[Europe/London]',
      twoDays,
      'too-late',
      true,
    ],
    [
      'midnight begins the next day, whatever the terms say of hours',
      '2026-06-12T00:00[Europe/London]',
      twoDays,
      'in-time',
      false,
    ],
    [
      'from a soloist abroad it is read on the clock of the place',
      '2026-06-12T00:30[Europe/Helsinki]',
      twoDays,
      'in-time',
      true,
    ],
  ])('%s', (_, word, notice, boundary, verdict) => {
    expect(inTime(at(word), EXAM, { notice, boundary, holidays: none })).toBe(verdict);
  });
});
