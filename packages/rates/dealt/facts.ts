// Engagements as fast-check deals them: any calls, journeys and costs, in any order.

import { type Season, Temporal } from '@colla/calendar';
import type { Call, CallKind, Standing } from '@colla/hours';
import fc from 'fast-check';
import type { Facts, Move } from '../src/facts.ts';

export const midnight = Temporal.ZonedDateTime.from('2026-03-01T00:00[Europe/London]');
export const kinds: readonly CallKind[] = ['rehearsal', 'lesson', 'recital', 'exam'];

export const minutes = (most: number) => fc.integer({ min: 1, max: most });
export const instant = fc
  .integer({ min: -30 * 24 * 60, max: 40 * 24 * 60 })
  .map((after) => midnight.add({ minutes: after }));

const standing = (start: Temporal.ZonedDateTime): fc.Arbitrary<Standing> =>
  fc.oneof(
    {
      weight: 6,
      arbitrary: minutes(300).map(
        (long): Standing => ({ is: 'played', times: { start, end: start.add({ minutes: long }) } }),
      ),
    },
    { weight: 2, arbitrary: fc.constant<Standing>({ is: 'agreed' }) },
    { weight: 1, arbitrary: fc.constant<Standing>({ is: 'held' }) },
    { weight: 1, arbitrary: fc.constant<Standing>({ is: 'held', onlyIf: 'called' }) },
    {
      weight: 2,
      arbitrary: fc
        .record({
          at: instant,
          by: fc.constantFrom('payer' as const, 'pianist' as const),
          reason: fc.constantFrom('other' as const, 'illness' as const),
          wasAgreed: fc.boolean(),
        })
        .map((word): Standing => ({ is: 'cancelled', ...word })),
    },
    { weight: 1, arbitrary: fc.constant<Standing>({ is: 'missed', by: 'payer', reason: 'forgotten' }) },
  );

export const callArb: fc.Arbitrary<Omit<Call, 'id'>> = fc
  .record({
    kind: fc.constantFrom(...kinds),
    start: fc.integer({ min: 0, max: 40 * 96 }),
    long: minutes(240),
    label: fc.option(fc.constant('mock'), { nil: undefined }),
  })
  .chain(({ kind, start, long, label }) => {
    const from = midnight.add({ minutes: start * 15 });
    return standing(from).map((standing) => ({
      kind,
      ...(label === undefined ? {} : { label }),
      place: 'Hall',
      planned: { start: from, end: from.add({ minutes: long }) },
      standing,
    }));
  });

const withIds = (calls: readonly Omit<Call, 'id'>[]): Call[] =>
  calls.map((call, index) => ({ id: `c${String(index).padStart(2, '0')}`, ...call }));

export const played = (call: Omit<Call, 'id'>): Omit<Call, 'id'> => ({
  ...call,
  standing: { is: 'played', times: call.planned },
});

const legArb = fc.record({
  thousandths: fc.integer({ min: 0, max: 200_000 }),
  minutes: fc.integer({ min: 0, max: 300 }),
});

/** A term that ends within the span of the calls: some are in it, some are not. */
const spring: Season = {
  id: 'spring',
  name: 'spring',
  from: Temporal.PlainDate.from('2026-01-12'),
  to: Temporal.PlainDate.from('2026-03-20'),
};

function movesOf(
  calls: readonly Call[],
  moved: readonly { which: number; at: Temporal.ZonedDateTime; was: Temporal.ZonedDateTime }[],
): Move[] {
  const { length } = calls;
  return moved.flatMap(({ which, at, was }) => {
    const call = calls[which % Math.max(1, length)];
    return call ? [{ call: call.id, at, by: 'payer', was: { start: was, end: was.add({ hours: 1 }) } }] : [];
  });
}

const factsOf = (calls: fc.Arbitrary<Omit<Call, 'id'>[]>): fc.Arbitrary<Facts> =>
  fc
    .record({
      calls: calls.map(withIds),
      works: fc.array(fc.boolean(), { maxLength: 3 }),
      legs: fc.array(legArb, { maxLength: 2 }),
      costs: fc.array(fc.bigInt({ min: 0n, max: 20_000n }), { maxLength: 2 }),
      sharers: fc.integer({ min: 1, max: 3 }),
      pianistClass: fc.constantFrom('student', 'staff'),
      moved: fc.array(fc.record({ which: fc.nat(), at: instant, was: instant }), { maxLength: 3 }),
      came: fc.option(fc.integer({ min: -40, max: 40 }), { nil: undefined }),
      offered: fc.boolean(),
      rolledOver: fc.option(fc.record({ covered: fc.nat(300) }), { nil: undefined }),
    })
    .map(({ works, legs, costs, moved, came, rolledOver, ...rest }) => ({
      ...rest,
      ...(rolledOver ? { rolledOver } : {}),
      moves: movesOf(rest.calls, moved),
      terms: [spring],
      askedAt: midnight.subtract({ days: 3 }),
      programme: works.map((requested, index) => ({
        id: `w${index}`,
        title: `Work ${index}`,
        minutes: 5,
        requested,
        ...(came === undefined ? {} : { part: { receivedOn: midnight.toPlainDate().add({ days: came }) } }),
      })),
      legs: legs.map(({ thousandths, minutes }, index) => ({
        id: `l${index}`,
        on: midnight.toPlainDate().add({ days: index % 2 }),
        from: 'Home',
        to: 'Hall',
        distance: { thousandths, unit: 'km' as const },
        minutes,
        purpose: 'call',
      })),
      costs: costs.map((amount, index) => ({
        id: `x${index}`,
        on: midnight.toPlainDate(),
        what: `Cost ${index}`,
        amount,
      })),
      soloist: {},
      circumstances: ['late', 'alone'],
      holidays: new Set(['2026-03-06']),
    }));

/** Calls that turned out in any way. */
export const facts = factsOf(fc.array(callArb, { maxLength: 7 }));

/** Calls that were all played as planned. */
export const playedFacts = factsOf(fc.array(callArb.map(played), { minLength: 1, maxLength: 6 }));
