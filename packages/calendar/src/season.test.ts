import { granted } from '@colla/refusal';
import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { inSeason, season, weekOf, weeksOf } from './season.ts';

const day = (text: string) => Temporal.PlainDate.from(text);
const autumn = { id: 's', name: 'Autumn 2026', from: day('2026-09-02'), to: day('2026-12-15') };

describe('a season', () => {
  it('holds both its first and its last day, and no other beyond', () => {
    const days = ['2026-09-01', '2026-09-02', '2026-12-15', '2026-12-16'].map(day);
    expect(days.map((one) => inSeason(one, autumn))).toEqual([false, true, true, false]);
  });

  it('may be one day long', () => {
    expect(season({ ...autumn, to: autumn.from })).toMatchObject({ name: 'Autumn 2026' });
  });

  it('does not end before it begins', () => {
    expect(season({ ...autumn, to: day('2026-09-01') })).toMatchObject({
      code: 'calendar/season-ends-early',
      field: '/to',
    });
  });

  it('is no longer than two years', () => {
    const from = day('2027-09-01');
    expect(granted(season({ ...autumn, from, to: day('2029-08-31') })).name).toBe('Autumn 2026');
    expect(season({ ...autumn, from, to: day('2029-09-03') })).toMatchObject({
      code: 'calendar/season-too-long',
    });
  });

  it('touches each week that has a day of it', () => {
    // Wednesday 2 September to Tuesday 15 September: the weeks of 31 August, 7 and 14 September
    const weeks = weeksOf({ ...autumn, to: day('2026-09-15') });
    expect(weeks.map(String)).toEqual(['2026-08-31', '2026-09-07', '2026-09-14']);
  });
});

describe('a week begins on its Monday', () => {
  it.each([
    ['2026-11-23', '2026-11-23'],
    ['2026-11-29', '2026-11-23'],
    ['2027-01-01', '2026-12-28'],
  ])('%s is in the week of %s', (one, monday) => {
    expect(weekOf(day(one)).toString()).toBe(monday);
  });

  it('and every day of a season is in one of its weeks', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 700 }), fc.integer({ min: 0, max: 700 }), (start, length) => {
        const from = day('2026-01-01').add({ days: start });
        const weeks = weeksOf({ ...autumn, from, to: from.add({ days: length }) }).map(String);
        const inside = from.add({ days: Math.floor(length / 2) });
        expect(weeks).toContain(weekOf(inside).toString());
        expect(weeks[0]).toBe(weekOf(from).toString());
      }),
    );
  });
});
