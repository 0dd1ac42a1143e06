// What tariffs say of sums already charged, as fast-check deals it: what falls, who pays and is paid, taxes, deposits.

import type { Currency } from '@colla/money';
import fc from 'fast-check';
import type { Tariff, WrittenClause } from '../src/tariff.ts';
import {
  amount,
  circumstances,
  clause,
  journeys,
  one,
  type Part,
  pools,
  premiums,
  prices,
  share,
  sums,
  tariffOf,
  tariffWith,
} from './tariffs.ts';

/** Reasons that are forgiven, so many times. */
export const excuse = fc.record(
  {
    reasons: fc.subarray(['illness', 'other'], { minLength: 1 }),
    atMost: fc.integer({ min: 1, max: 2 }),
    each: fc.constantFrom('engagement', 'term'),
  },
  { requiredKeys: ['reasons'] },
);

/** A scale that descends: the longer the notice, the smaller the share. */
export const descending = fc
  .record({
    clock: fc.constantFrom('hours', 'days', 'working-days'),
    of: fc.constantFrom('call', 'engagement'),
    befores: fc.uniqueArray(fc.integer({ min: 0, max: 200 }), { maxLength: 4 }),
    shares: fc.array(share, { minLength: 6, maxLength: 6 }),
    excused: fc.option(excuse, { nil: undefined }),
  })
  .map(({ clock, of, befores, shares, excused }) => {
    const [otherwise = 0, ...steps] = shares.toSorted((a, b) => b - a);
    const scale = befores
      .toSorted((a, b) => a - b)
      .map((before, index) => ({ before, owes: { owes: 'share', share: steps[index] ?? 0 } }))
      .toReversed();
    return clause('notice', 'cancellation', {
      clock,
      of,
      scale,
      otherwise: { owes: 'share', share: otherwise },
      noShow: { owes: 'all' },
      excused,
    });
  });

/** A scale of any steps, in any order of what they leave: a share, a sum, the deposit. */
export const uneven = (of: Currency): fc.Arbitrary<WrittenClause[]> => {
  const owes = fc.oneof(
    share.map((share) => ({ owes: 'share', share })),
    amount(of).map((amount) => ({ owes: 'amount', amount })),
    fc.constant({ owes: 'deposit' }),
  );
  return fc
    .record({ before: fc.integer({ min: 1, max: 200 }), early: owes, late: owes, deposit })
    .map(({ before, early, late, deposit }) => [
      deposit,
      clause('notice', 'cancellation', { scale: [{ before, owes: early }], otherwise: late }),
    ]);
};

const payers = fc
  .array(fc.integer({ min: 0, max: 7 }), { minLength: 2, maxLength: 5 })
  .filter((parts) => parts.some((part) => part > 0))
  .map((among) => among.map((parts, index) => ({ payer: `payer ${index}`, parts })));

/** Who pays everything. */
export const shared = payers.map((among) => clause('split', 'split', { among }));

/** To the hundredth of a basis point. */
const rate = fc.integer({ min: 0, max: 300_000 }).map((hundredths) => hundredths / 100);

export const taxed = (rounding: 'per total' | 'per line') =>
  fc
    .record({ rate, inside: fc.boolean() })
    .map((terms) => clause('tax', 'tax', { name: 'VAT', rounding, ...terms }));

/** Two taxes on everything, added or inside, side by side or one on top of the other. */
export const twoTaxes = fc
  .record({ rates: fc.tuple(rate, rate), inside: fc.boolean(), onTop: fc.boolean() })
  .map(({ rates: [one, other], inside, onTop }) => [
    clause('gst', 'tax', { name: 'GST', rate: one, inside }),
    clause('pst', 'tax', { name: 'PST', rate: other, inside, ...(onTop ? { onTopOf: ['gst'] } : {}) }),
  ]);

/** No tax, one, or two: what is added grows with what it is on, and no charge has another rate. */
export const taxes: Part = () =>
  fc.oneof(
    fc.constant<WrittenClause[]>([]),
    taxed('per total').map((tax) => [tax]),
    twoTaxes,
  );

export const deposit = share.map((of) =>
  clause('deposit', 'deposit', { of: { as: 'share', share: of }, due: [{ event: 'agreement', days: 3 }] }),
);

/** What a debt costs that is paid late. */
export const late = (of: Currency): fc.Arbitrary<WrittenClause> =>
  fc
    .oneof(
      fc
        .record({ amount: amount(of, 5000), each: fc.constantFrom('debt', 'day', 'week', 'month') })
        .map((sum) => ({ as: 'sum', ...sum })),
      share.map((share) => ({ as: 'share a month', share })),
      share.map((rate) => ({ as: 'yearly rate', rate })),
    )
    .map((by) => clause('interest', 'late-payment', { by }));

/** Kinds of clause that charge something others may name. */
const CHARGING = ['hourly', 'fixed', 'package', 'supplement', 'entitlement', 'travel', 'cost'];

/** Some of the clauses of a tariff that charge. */
export function someOf({ written }: Tariff): fc.Arbitrary<string[]> {
  const ids = written.clauses.filter(({ kind }) => CHARGING.includes(kind)).map(({ id }) => id);
  return fc.subarray(ids, { minLength: 1 });
}

/** A split of what some clauses of a tariff charge. */
export function splitOf(tariff: Tariff): fc.Arbitrary<WrittenClause> {
  return fc.tuple(someOf(tariff), payers).map(([of, among]) => clause('split', 'split', { of, among }));
}

/** A third party to whom some of it goes. */
export function payeeOf(tariff: Tariff): fc.Arbitrary<WrittenClause> {
  return someOf(tariff).map((of) => clause('theirs', 'payee', { payee: 'the festival', of }));
}

/** Three rates of one tax: on what some clauses charge, on journeys and costs, and on the rest. */
export function threeRates(tariff: Tariff): fc.Arbitrary<WrittenClause[]> {
  return fc
    .tuple(someOf(tariff), fc.tuple(rate, rate, rate), fc.constantFrom('per total', 'per line'), fc.boolean())
    .map(([on, [some, going, rest], rounding, inside]) => [
      clause('vat-some', 'tax', { name: 'VAT', rounding, inside, rate: some, on }),
      clause('vat-going', 'tax', { name: 'VAT', rounding, inside, rate: going, only: ['travel', 'cost'] }),
      clause('vat', 'tax', { name: 'VAT', rounding, inside, rate: rest }),
    ]);
}

/** A tariff with further clauses. */
export function withMore({ currency, written }: Tariff, more: readonly WrittenClause[]): Tariff {
  return tariffOf(currency, [...written.clauses, ...more]);
}

/** Anything at all. */
export const tariff: fc.Arbitrary<Tariff> = tariffWith(
  prices,
  pools,
  premiums,
  circumstances,
  sums,
  journeys,
  one(descending),
  one(deposit),
  (of) => fc.option(late(of)).map((clause) => (clause ? [clause] : [])),
).chain((apart) =>
  fc
    .tuple(
      fc.oneof(
        fc.constant([]),
        splitOf(apart).map((split) => [split]),
        shared.map((split) => [split]),
      ),
      fc.oneof(
        fc.constant([]),
        payeeOf(apart).map((payee) => [payee]),
      ),
      fc.oneof(
        fc.constant([]),
        taxed('per line').map((tax) => [tax]),
        twoTaxes,
        threeRates(apart),
      ),
    )
    .map((more) => withMore(apart, more.flat())),
);
