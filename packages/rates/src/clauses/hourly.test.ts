// Hours reckoned together: whatever the calls, they come to what their time comes to as one.

import { chargedMinutes, playedMinutes } from '@colla/hours';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { minutes, playedFacts } from '../../dealt/facts.ts';
import type { Facts } from '../facts.ts';
import { pounds, priced, tariffOf } from '../priced.ts';
import { sentencesOf, type WrittenClause } from '../tariff.ts';

const hourly = (terms: object, also: Partial<WrittenClause> = {}): WrittenClause => ({
  id: 'hours',
  kind: 'hourly',
  ...also,
  terms: { price: '60.00', ...terms },
});
const total = (terms: object, facts: Parameters<typeof priced>[1]) => priced([hourly(terms)], facts).total;

describe('hours reckoned together', () => {
  const terms = fc.record({
    minimum: fc.constantFrom(0, 60, 600),
    increment: fc.constantFrom(1, 15, 60),
    first: minutes(400),
    second: minutes(400),
  });

  it('for the engagement come to the price of their sum, step by step and tier by tier', () => {
    fc.assert(
      fc.property(playedFacts, terms, (facts, { minimum, increment, first, second }) => {
        const further = [
          { after: first, price: '30.00' },
          { after: first + second, price: '90.00' },
        ];
        const time = facts.calls.reduce((sum, call) => sum + playedMinutes(call), 0);
        const charged = chargedMinutes(time, { minimum, increment, round: 'up', grace: 0 });
        const beyond = (after: number) => Math.max(0, charged - after);
        // At 60, 30 and 90 an hour a minute is a pound, fifty pence, and one pound fifty.
        const pence = 100 * charged - 50 * beyond(first) + 100 * beyond(first + second);
        expect(total({ minimum, increment, each: 'engagement', further }, facts)).toBe(BigInt(pence));
      }),
    );
  });

  it('never cost less when a call is longer', () => {
    const each = fc.constantFrom('call', 'day', 'week', 'engagement');
    fc.assert(
      fc.property(
        playedFacts,
        terms,
        each,
        minutes(120),
        (facts, { minimum, increment, first }, each, more) => {
          const shape = {
            minimum,
            increment,
            each,
            further: [{ after: first, price: '10.00' }],
            rest: { minutes: 30, after: 90 },
          };
          const calls = facts.calls.map((call, index) => {
            if (index > 0 || call.standing.is !== 'played') return call;
            const { start, end } = call.standing.times;
            return {
              ...call,
              standing: { is: 'played' as const, times: { start, end: end.add({ minutes: more }) } },
            };
          });
          const longer: Facts = { ...facts, calls };
          expect(total(shape, longer)).toBeGreaterThanOrEqual(total(shape, facts));
        },
      ),
    );
  });

  it('leave half of its own part for a call that falls: the second of two hours at 60 and 40', () => {
    const notice: WrittenClause = {
      id: 'notice',
      kind: 'cancellation',
      terms: { scale: [], otherwise: { owes: 'share', share: 5000 } },
    };
    const hours = hourly({ each: 'week', further: [{ after: 60, price: '40.00' }] });
    const bill = priced([hours, notice], {
      calls: ['2 × lesson 60'],
      fallen: [{ call: 1, at: '2026-03-01T10:00' }],
    });
    expect(pounds(bill.total)).toBe('80.00');
  });

  it('say so', () => {
    const clause = hourly({
      each: 'day',
      minimum: 120,
      further: [{ after: 480, price: '90.00' }],
      rest: { minutes: 30, after: 300 },
    });
    expect(sentencesOf(tariffOf([clause]), 'en-GB')[0]?.sentence).toBe(
      'All calls are 60.00 an hour, charged in quarter hours, 2 hours at least, the time of each day together, beyond 8 hours 90.00 an hour, without a rest of half an hour in calls longer than 5 hours.',
    );
  });
});

it('a stretch that lies before the one before it is refused', () => {
  const further = [
    { after: 120, price: '40.00' },
    { after: 60, price: '50.00' },
  ];
  expect(() => tariffOf([hourly({ further })])).toThrow(
    'Clause “hours”: Further prices must run from the least to the most: what lies beyond 60 stands too late.',
  );
});
