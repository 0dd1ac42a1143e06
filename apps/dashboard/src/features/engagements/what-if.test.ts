// What if: each answer is the statement over the facts as they would be.

import { Temporal } from '@colla/calendar';
import { currency } from '@colla/money';
import { cancellationCurve, given, readTariff, type WrittenClause } from '@colla/rates';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { drawCurve } from './curve-drawing.ts';
import { callsAhead, casesOf } from './what-if.ts';

const pounds = granted(currency('GBP'));

function termsOf(...clauses: WrittenClause[]) {
  const tariff = readTariff({ name: 'Any', currency: 'GBP', version: 1, from: '2026-01-01', clauses });
  return { tariff: granted(tariff), locale: 'en-GB' };
}

const hours = { id: 'hours', kind: 'hourly', terms: { price: '40.00' } };
const notice = {
  id: 'notice',
  kind: 'cancellation',
  terms: {
    scale: [
      { before: 72, owes: { owes: 'nothing' } },
      { before: 24, owes: { owes: 'share', share: 5000 } },
    ],
    otherwise: { owes: 'all' },
  },
};

// Wednesday noon; the rehearsal is on Saturday at 13:00, the second a week later.
const now = Temporal.ZonedDateTime.from('2026-03-04T12:00[Europe/London]');
const facts = given(
  {
    calls: ['rehearsal 60 on 2026-03-07 at 13:00, agreed', 'rehearsal 60 on 2026-03-14 at 13:00, agreed'],
  },
  pounds,
);

function answers(terms: ReturnType<typeof termsOf>, of = facts, at = now) {
  const [call] = callsAhead(of, at);
  return call ? casesOf(of, terms, call, at).map(({ name, total }) => [name, total]) : [];
}

describe('two rehearsals of 40.00, of which the next begins in 73 hours', () => {
  it('the next costs nothing cancelled now, half tomorrow and on Friday at noon, and 40.00 more an hour longer', () => {
    // On Friday at 12:00, 25 hours before, it is still half.
    expect(answers(termsOf(hours, notice))).toEqual([
      ['stands', 8_000n],
      ['fallsNow', 4_000n],
      ['fallsTomorrow', 6_000n],
      ['fallsFriday', 6_000n],
      ['longer', 12_000n],
    ]);
  });

  it('on Thursday, tomorrow is Friday and is asked once', () => {
    const thursday = now.add({ days: 1 });
    expect(answers(termsOf(hours, notice), facts, thursday).map(([name]) => name)).toEqual([
      'stands',
      'fallsNow',
      'fallsTomorrow',
      'longer',
    ]);
  });

  it('what is played is not ahead', () => {
    expect(callsAhead(given({ calls: ['rehearsal 60 on 2026-03-07'] }, pounds), now)).toEqual([]);
  });
});

it('music a week late is asked where a clause wants it by a day, and costs what that clause says', () => {
  const late = {
    id: 'late',
    kind: 'late-score',
    terms: {
      steps: [
        { days: 28, means: { as: 'charge', amount: '25.00' } },
        { days: 14, means: { as: 'charge', amount: '50.00' } },
      ],
    },
  };
  const song = given({ calls: ['recital 60 on 2026-06-20, agreed'], works: ['Song'] }, pounds);
  // A week later than four weeks before is three weeks before: 40.00 + 25.00.
  expect(answers(termsOf(hours, late), song)).toContainEqual(['lateScores', 6_500n]);
});

it('the line of what cancelling both costs begins now, and rises where a limit of notice is passed', () => {
  const until = Temporal.ZonedDateTime.from('2026-03-07T13:00[Europe/London]');
  const curve = cancellationCurve(facts, termsOf(hours, notice), { from: now, until });
  const drawing = drawCurve(curve, until);
  // In time until Wednesday 13:00, then half, from Friday 13:00 all of the first; the second still costs nothing.
  expect(curve.map(({ total }) => total)).toEqual([0n, 2_000n, 4_000n]);
  // Steps 72 and 24 hours before the end: it would begin 96 hours before, but now is 73 hours before.
  expect(drawing?.begins.equals(now)).toBe(true);
  expect(drawing?.top).toBe(4_000n);
  expect(drawing?.corners.map(([x, y]) => [Math.round(x * 73), y])).toEqual([
    [0, 0],
    [1, 0],
    [1, 0.5],
    [49, 0.5],
    [49, 1],
    [73, 1],
  ]);
});
