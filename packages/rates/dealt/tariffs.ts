// Tariffs as fast-check deals them: clauses of every kind, put together so that they do not contradict.

import { type Currency, currency, toDecimal } from '@colla/money';
import { granted } from '@colla/refusal';
import fc from 'fast-check';
import { readTariff, type Tariff, type WrittenClause } from '../src/tariff.ts';
import { kinds, minutes } from './facts.ts';

export const money = fc.constantFrom('GBP', 'JPY', 'KWD').map((code) => granted(currency(code)));
export const amount = (of: Currency, most = 50_000) =>
  fc.integer({ min: 0, max: most }).map((minor) => toDecimal(BigInt(minor), of));
export const share = fc.integer({ min: 0, max: 10_000 });
const each = fc.constantFrom('call', 'day', 'week', 'month', 'term', 'engagement');
const someKinds = fc.subarray([...kinds], { minLength: 1 });
export const clause = (
  id: string,
  kind: string,
  terms: object,
  also: Partial<WrittenClause> = {},
): WrittenClause => ({
  id,
  kind,
  ...also,
  terms: { ...terms },
});

const timed = (of: Currency) =>
  fc.record({
    price: amount(of),
    per: fc.constantFrom(15, 30, 45, 60),
    minimum: fc.constantFrom(0, 30, 60, 120),
    increment: fc.constantFrom(1, 5, 15, 30, 60),
    round: fc.constantFrom('up', 'nearest', 'down'),
  });

/** Prices: one for all calls, one for recitals, one for calls called “mock”. */
export const prices = (of: Currency): fc.Arbitrary<WrittenClause[]> =>
  fc
    .record({
      hours: timed(of),
      recital: fc.option(fc.record({ price: amount(of), each: fc.constantFrom('call', 'week') })),
      mock: fc.option(
        fc.record({
          price: amount(of),
          includes: minutes(120),
          beyond: fc.record({ price: amount(of), increment: fc.constantFrom(1, 15) }),
        }),
      ),
      works: fc.option(fc.record({ price: amount(of), each: fc.constantFrom('work', 'requested work') })),
    })
    .map(({ hours, recital, mock, works }) => [
      clause('hours', 'hourly', hours, { payer: 'student' }),
      ...(recital ? [clause('recital', 'fixed', recital, { for: { calls: ['recital'] } })] : []),
      ...(mock ? [clause('mock', 'fixed', mock, { for: { calls: ['exam'], labels: ['mock'] } })] : []),
      ...(works ? [clause('works', 'fixed', works)] : []),
    ]);

/** Hours covered and packages: what draws on a pool of calls. */
export const pools = (of: Currency): fc.Arbitrary<WrittenClause[]> =>
  fc
    .record({
      covered: fc.option(
        fc.record({
          minutes: minutes(400),
          price: amount(of),
          each,
          rollsOver: fc.boolean(),
          calls: fc.option(fc.integer({ min: 1, max: 4 }), { nil: undefined }),
          inARow: fc.option(fc.integer({ min: 1, max: 3 }), { nil: undefined }),
          first: fc.option(someKinds, { nil: undefined }),
        }),
      ),
      pack: fc.option(
        fc.record({
          price: amount(of),
          each: fc.constantFrom('engagement', 'soloist'),
          includes: fc.array(
            fc.record(
              {
                of: someKinds.map((calls) => ({ calls })),
                calls: fc.integer({ min: 1, max: 3 }),
                minutes: minutes(300),
                minutesEach: minutes(90),
              },
              { requiredKeys: ['of'] },
            ),
            { minLength: 1, maxLength: 3 },
          ),
        }),
      ),
    })
    .map(({ covered, pack }) => [
      ...(covered
        ? [
            clause(
              'covered',
              'entitlement',
              { ...covered, rollsOver: covered.rollsOver && covered.each !== 'call' },
              { payer: 'department' },
            ),
          ]
        : []),
      ...(pack ? [clause('pack', 'package', { what: 'Package', ...pack }, { payer: 'student' })] : []),
    ]);

const whenAlone: Partial<WrittenClause> = { for: { circumstances: ['alone'] } };

/** What adds a share or a sum for each call, and no more than that. */
export const premiums = (of: Currency): fc.Arbitrary<WrittenClause[]> =>
  fc
    .record({
      alone: fc.option(share),
      sunday: fc.option(share),
      late: fc.option(amount(of)),
      over: fc.option(
        fc.record({
          price: amount(of),
          increment: fc.constantFrom(1, 15),
          beyond: fc.option(minutes(120), { nil: undefined }),
        }),
      ),
      student: fc.option(share),
    })
    .map(({ alone, sunday, late, over, student }) => [
      ...(alone === null
        ? []
        : [clause('alone', 'supplement', { what: 'Alone', by: { as: 'share', share: alone } }, whenAlone)]),
      ...(sunday === null
        ? []
        : [
            clause(
              'sunday',
              'supplement',
              { what: 'Sunday', by: { as: 'share', share: sunday }, on: ['hours'] },
              { for: { days: ['sunday', 'public holiday'] } },
            ),
          ]),
      ...(late === null
        ? []
        : [
            clause(
              'late',
              'supplement',
              { what: 'Late', by: { as: 'amount', amount: late } },
              { for: { circumstances: ['late'], calls: ['recital', 'exam'] } },
            ),
          ]),
      ...(over === null
        ? []
        : [clause('over', 'supplement', { what: 'Overrun', by: { as: 'time', ...over } })]),
      ...(student === null
        ? []
        : [
            clause(
              'student',
              'discount',
              { what: 'Student', by: { as: 'share', share: student } },
              { for: { pianists: ['student'] } },
            ),
          ]),
    ]);

/** What comes of late music, moved calls and hours of the evening; of Sunday and evening the highest only. */
export const circumstances = (of: Currency): fc.Arbitrary<WrittenClause[]> =>
  fc
    .record({
      late: fc.option(
        fc.record({ before: fc.constantFrom('first call', 'principal call'), amount: amount(of, 5000) }),
      ),
      moved: fc.option(
        fc.record({
          free: fc.nat(2),
          noticeHours: fc.nat(72),
          after: fc.array(share, { minLength: 1, maxLength: 3 }),
        }),
      ),
      evening: fc.option(amount(of, 5000)),
      highest: fc.boolean(),
    })
    .map(({ late, moved, evening, highest }) => [
      ...(late
        ? [
            clause('music', 'late-score', {
              before: late.before,
              steps: [{ days: 14, means: { as: 'charge', amount: late.amount } }],
            }),
          ]
        : []),
      ...(moved ? [clause('moved', 'change', moved)] : []),
      ...(evening === null
        ? []
        : [
            clause('evening', 'supplement', {
              what: 'Evening',
              by: {
                as: 'time',
                price: evening,
                of: 'hours of the day',
                between: { from: '18:00', until: '01:00' },
              },
            }),
            clause(
              'weekend',
              'supplement',
              { what: 'Weekend', by: { as: 'amount', amount: evening } },
              { for: { days: ['sunday'] } },
            ),
            ...(highest ? [clause('highest', 'highest', { of: ['evening', 'weekend'] })] : []),
          ]),
    ]);

/**
 * What looks at several calls together. One limit at most: where a most for some clauses and a least for all of
 * them meet, no order is fair to both.
 */
export const sums = (of: Currency): fc.Arbitrary<WrittenClause[]> =>
  fc
    .record({
      health: fc.option(fc.record({ amount: amount(of, 3000), each })),
      pension: fc.option(share),
      limit: fc.option(
        fc.oneof(
          fc.record({ each, most: amount(of), on: fc.constant(['hours']) }),
          fc.record({ most: amount(of) }),
          fc.record({ least: amount(of, 3000) }),
        ),
      ),
    })
    .map(({ health, pension, limit }) => [
      ...(health
        ? [clause('health', 'supplement', { what: 'Health', by: { as: 'amount', ...health } })]
        : []),
      ...(pension === null
        ? []
        : [
            clause('pension', 'supplement', {
              what: 'Pension',
              by: { as: 'share', share: pension, together: true },
              on: ['hours'],
            }),
          ]),
      ...(limit ? [clause('limit', 'limit', limit)] : []),
    ]);

export const journeys = (of: Currency): fc.Arbitrary<WrittenClause[]> =>
  fc
    .record({
      travel: fc.record({
        perUnit: amount(of, 300),
        perHour: amount(of, 3000),
        flat: amount(of),
        over: fc.integer({ min: 0, max: 60 }),
      }),
      handling: share,
    })
    .map(({ travel, handling }) => [clause('way', 'travel', travel), clause('costs', 'cost', { handling })]);

export type Part = (of: Currency) => fc.Arbitrary<WrittenClause[]>;
export const certainly =
  (part: fc.Arbitrary<WrittenClause>): Part =>
  () =>
    part.map((clause) => [clause]);
export const one =
  (part: fc.Arbitrary<WrittenClause>): Part =>
  () =>
    fc.option(part).map((clause) => (clause ? [clause] : []));

export const tariffWith = (...parts: Part[]): fc.Arbitrary<Tariff> =>
  money.chain((of) =>
    fc.tuple(...parts.map((part) => part(of))).map((clauses) => tariffOf(of, clauses.flat())),
  );

export function tariffOf(of: Currency, clauses: readonly WrittenClause[]): Tariff {
  return granted(readTariff({ name: 'Dealt', currency: of, version: 1, from: '2026-01-01', clauses }));
}
