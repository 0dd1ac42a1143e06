import { Temporal } from '@colla/calendar';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Call } from './call.ts';
import { chargedMinutes, countedMinutes, type Rounding } from './charged.ts';

const exact: Rounding = { minimum: 0, increment: 1, round: 'up', grace: 0 };
const quarters: Rounding = { ...exact, increment: 15 };

describe('minutes are made up into what is charged', () => {
  it.each<[string, number, Rounding, number]>([
    ['to the minute', 47, exact, 47],
    ['a quarter hour begun counts', 61, quarters, 75],
    ['a full one is not begun anew', 60, quarters, 60],
    ['nothing is nothing', 0, quarters, 0],
    ['an hour at least', 20, { ...quarters, minimum: 60 }, 60],
    ['the minimum does not hold a longer call down', 95, { ...quarters, minimum: 60 }, 105],
    ['five minutes into a step are forgiven', 65, { ...quarters, grace: 5 }, 60],
    ['six are not', 66, { ...quarters, grace: 5 }, 75],
    ['to the nearest step, the half going up', 65, { ...exact, increment: 10, round: 'nearest' }, 70],
    ['to the nearest step below the half', 64, { ...exact, increment: 10, round: 'nearest' }, 60],
    ['whole steps only', 74, { ...quarters, round: 'down' }, 60],
    ['a service of two hours begun', 121, { ...exact, increment: 120 }, 240],
    ['a call shorter than what is forgiven', 4, { ...quarters, grace: 5 }, 0],
  ])('%s: %d', (_, minutes, rounding, charged) => {
    expect(chargedMinutes(minutes, rounding)).toBe(charged);
  });

  const roundings = fc.record({
    minimum: fc.nat(180),
    increment: fc.integer({ min: 1, max: 120 }),
    round: fc.constantFrom<Rounding['round']>('up', 'nearest', 'down'),
    grace: fc.nat(10),
  });

  it('and a longer call is never charged less', () => {
    fc.assert(
      fc.property(fc.nat(600), fc.nat(600), roundings, (minutes, more, rounding) => {
        expect(chargedMinutes(minutes + more, rounding)).toBeGreaterThanOrEqual(
          chargedMinutes(minutes, rounding),
        );
      }),
    );
  });

  it('and never by a step or more beside what was played, unless the minimum is owed', () => {
    fc.assert(
      fc.property(fc.nat(600), roundings, (minutes, rounding) => {
        const charged = chargedMinutes(minutes, rounding);
        const least = minutes - rounding.increment - (rounding.round === 'up' ? rounding.grace : 0);
        expect(charged).toBeGreaterThan(least);
        expect(charged === rounding.minimum || charged < minutes + rounding.increment).toBe(true);
      }),
    );
  });
});

describe('which minutes of a call count', () => {
  const start = Temporal.ZonedDateTime.from('2026-03-14T10:00[Europe/London]');
  const call = (played?: number): Call => ({
    id: 'c1',
    kind: 'rehearsal',
    place: 'Hall',
    planned: { start, end: start.add({ minutes: 60 }) },
    standing:
      played === undefined
        ? { is: 'agreed' }
        : { is: 'played', times: { start, end: start.add({ minutes: played }) } },
  });

  it.each([
    ['as played, where it ran over', 75, 'played', 75],
    ['as planned, where it ran over', 75, 'planned', 60],
    ['the longer, where it ran over', 75, 'longer', 75],
    ['the longer, where it ended early', 40, 'longer', 60],
    ['as played, where it ended early', 40, 'played', 40],
    ['as planned, where it has not been played', undefined, 'played', 60],
  ] as const)('%s', (_, played, counted, minutes) => {
    expect(countedMinutes(call(played), counted)).toBe(minutes);
  });
});
