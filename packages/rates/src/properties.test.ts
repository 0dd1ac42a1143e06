// What holds for every tariff and every engagement. fast-check deals them; a failure prints its seed.

import { Temporal } from '@colla/calendar';
import { type Call, type CallKind, playedMinutes, type Standing } from '@colla/hours';
import { type Currency, currency, fromDecimal, minorDigits, toDecimal } from '@colla/money';
import { granted, refused } from '@colla/refusal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Facts } from './facts.ts';
import type { Line } from './line.ts';
import { type Statement, statement } from './statement.ts';
import { readTariff, type Tariff, type WrittenClause } from './tariff.ts';

const midnight = Temporal.ZonedDateTime.from('2026-03-01T00:00[Europe/London]');
const asOf = midnight.add({ days: 20 });
const kinds: readonly CallKind[] = ['rehearsal', 'lesson', 'recital', 'exam'];

const sum = (amounts: readonly bigint[]) => amounts.reduce((sum, amount) => sum + amount, 0n);
const price = (facts: Facts, tariff: Tariff) => statement(facts, { tariff, locale: 'en-GB' }, asOf);

/* Facts. */

const minutes = (most: number) => fc.integer({ min: 1, max: most });
const instant = fc
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

const callArb: fc.Arbitrary<Omit<Call, 'id'>> = fc
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

const played = (call: Omit<Call, 'id'>): Omit<Call, 'id'> => ({
  ...call,
  standing: { is: 'played', times: call.planned },
});

const legArb = fc.record({
  thousandths: fc.integer({ min: 0, max: 200_000 }),
  minutes: fc.integer({ min: 0, max: 300 }),
});

const factsOf = (calls: fc.Arbitrary<Omit<Call, 'id'>[]>): fc.Arbitrary<Facts> =>
  fc
    .record({
      calls: calls.map(withIds),
      works: fc.array(fc.boolean(), { maxLength: 3 }),
      legs: fc.array(legArb, { maxLength: 2 }),
      costs: fc.array(fc.bigInt({ min: 0n, max: 20_000n }), { maxLength: 2 }),
      sharers: fc.integer({ min: 1, max: 3 }),
      pianistClass: fc.constantFrom('student', 'staff'),
      offered: fc.boolean(),
    })
    .map(({ works, legs, costs, ...rest }) => ({
      ...rest,
      programme: works.map((requested, index) => ({
        id: `w${index}`,
        title: `Work ${index}`,
        minutes: 5,
        requested,
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

const calls = fc.array(callArb, { maxLength: 7 });
const facts = factsOf(calls);
const playedFacts = factsOf(fc.array(callArb.map(played), { minLength: 1, maxLength: 6 }));

/* Tariffs. */

const money = fc.constantFrom('GBP', 'JPY', 'KWD').map((code) => granted(currency(code)));
const amount = (of: Currency, most = 50_000) =>
  fc.integer({ min: 0, max: most }).map((minor) => toDecimal(BigInt(minor), of));
const share = fc.integer({ min: 0, max: 10_000 });
const each = fc.constantFrom('call', 'day', 'week', 'month', 'engagement');
const someKinds = fc.subarray([...kinds], { minLength: 1 });
const clause = (
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
const prices = (of: Currency): fc.Arbitrary<WrittenClause[]> =>
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
const pools = (of: Currency): fc.Arbitrary<WrittenClause[]> =>
  fc
    .record({
      covered: fc.option(
        fc.record({
          minutes: minutes(400),
          price: amount(of),
          each,
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
      ...(covered ? [clause('covered', 'entitlement', covered, { payer: 'department' })] : []),
      ...(pack ? [clause('pack', 'package', { what: 'Package', ...pack }, { payer: 'student' })] : []),
    ]);

const whenAlone: Partial<WrittenClause> = { for: { circumstances: ['alone'] } };

/** What adds a share or a sum for each call, and no more than that. */
const premiums = (of: Currency): fc.Arbitrary<WrittenClause[]> =>
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

/**
 * What looks at several calls together. One limit at most: where a most for some clauses and a least for all of
 * them meet, no order is fair to both.
 */
const sums = (of: Currency): fc.Arbitrary<WrittenClause[]> =>
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

const journeys = (of: Currency): fc.Arbitrary<WrittenClause[]> =>
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

/** A scale that descends: the longer the notice, the smaller the share. */
const descending = fc
  .record({
    clock: fc.constantFrom('hours', 'days', 'working-days'),
    of: fc.constantFrom('call', 'engagement'),
    befores: fc.uniqueArray(fc.integer({ min: 0, max: 200 }), { maxLength: 4 }),
    shares: fc.array(share, { minLength: 6, maxLength: 6 }),
  })
  .map(({ clock, of, befores, shares }) => {
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
    });
  });

const shared = fc
  .array(fc.integer({ min: 0, max: 7 }), { minLength: 2, maxLength: 5 })
  .filter((parts) => parts.some((part) => part > 0))
  .map((among) =>
    clause('split', 'split', { among: among.map((parts, index) => ({ payer: `payer ${index}`, parts })) }),
  );

const taxed = (rounding: 'per total' | 'per line') =>
  fc
    .record({ rate: fc.integer({ min: 0, max: 3000 }), inside: fc.boolean() })
    .map((terms) => clause('tax', 'tax', { name: 'VAT', rounding, ...terms }));

const deposit = share.map((of) =>
  clause('deposit', 'deposit', { of: { as: 'share', share: of }, due: [{ event: 'agreement', days: 3 }] }),
);

type Part = (of: Currency) => fc.Arbitrary<WrittenClause[]>;
const certainly =
  (part: fc.Arbitrary<WrittenClause>): Part =>
  () =>
    part.map((clause) => [clause]);
const one =
  (part: fc.Arbitrary<WrittenClause>): Part =>
  () =>
    fc.option(part).map((clause) => (clause ? [clause] : []));

const tariffWith = (...parts: Part[]): fc.Arbitrary<Tariff> =>
  money.chain((of) =>
    fc.tuple(...parts.map((part) => part(of))).map((clauses) => tariffOf(of, clauses.flat())),
  );

function tariffOf(of: Currency, clauses: readonly WrittenClause[]): Tariff {
  return granted(readTariff({ name: 'Dealt', currency: of, version: 1, from: '2026-01-01', clauses }));
}

const tariff = tariffWith(
  prices,
  pools,
  premiums,
  sums,
  journeys,
  one(descending),
  one(shared),
  one(taxed('per line')),
  one(deposit),
);

function holds<Dealt extends [unknown, ...unknown[]]>(
  dealt: { [Key in keyof Dealt]: fc.Arbitrary<Dealt[Key]> },
  truth: (...values: Dealt) => void,
): void {
  fc.assert(fc.property(...dealt, truth), { numRuns: 150 });
}

describe('every statement', () => {
  it('sums its lines and taxes to its totals, for each payer and in all', () => {
    holds([facts, tariff], (facts, tariff) => {
      const bill = price(facts, tariff);
      const added = bill.taxes.filter(({ inside }) => !inside);
      expect(bill.total).toBe(
        sum(bill.lines.map(({ amount }) => amount)) + sum(added.map(({ amount }) => amount)),
      );
      expect(bill.net + bill.tax).toBe(bill.total);
      expect(sum(bill.payers.map(({ total }) => total))).toBe(bill.total);
      for (const { payer, total } of bill.payers) {
        const lines = bill.lines.filter((line) => line.payer === payer);
        const taxes = added.filter((tax) => tax.payer === payer);
        expect(total).toBe(sum([...lines, ...taxes].map(({ amount }) => amount)));
      }
    });
  });

  it('has each line at rate × quantity, rounded once, halves away from zero', () => {
    holds([facts, tariff], (facts, tariff) => {
      for (const { rate, quantity, amount } of price(facts, tariff).lines) {
        // Twice the distance between the amount and the exact product is at most one unit; at exactly one, it is away from zero.
        const exact = rate * BigInt(quantity.count);
        const off = 2n * (amount * BigInt(quantity.of) - exact);
        const unit = BigInt(quantity.of);
        const outward = exact >= 0n ? off : -off;
        expect(outward > -unit && outward <= unit).toBe(true);
      }
    });
  });

  it('names each line apart, by a clause of the tariff', () => {
    holds([facts, tariff], (facts, tariff) => {
      const { lines } = price(facts, tariff);
      expect(new Set(lines.map(({ key }) => key)).size).toBe(lines.length);
      expect(lines.every(({ clause }) => tariff.clauses.some(({ id }) => id === clause))).toBe(true);
    });
  });

  it('is the same whatever the order in which its facts were entered', () => {
    holds([facts, tariff, fc.integer()], (facts, tariff, seed) => {
      expect(price(shuffled(facts, seed), tariff)).toEqual(price(facts, tariff));
    });
  });

  it('prices a “what if” as it will be priced when it happens', () => {
    holds([facts, tariff], (facts, tariff) => {
      const now = price(facts, tariff);
      if (!now.ifCancelled) return;
      const calls = facts.calls.map((call): Call => {
        const falls =
          call.standing.is === 'agreed' && Temporal.ZonedDateTime.compare(call.planned.start, asOf) > 0;
        return falls
          ? {
              ...call,
              standing: { is: 'cancelled', at: asOf, by: 'payer', reason: 'other', wasAgreed: true },
            }
          : call;
      });
      expect(now.ifCancelled.total).toBe(price({ ...facts, calls }, tariff).total);
    });
  });
});

describe('sharing out', () => {
  it('divides every line among the payers to the last unit, and changes no total', () => {
    const apart = tariffWith(prices, pools, premiums, sums, journeys, one(descending));
    holds([facts, apart, shared], (facts, tariff, split) => {
      const whole = price(facts, tariff);
      const divided = price(facts, tariffOf(tariff.currency, [...tariff.written.clauses, split]));
      expect(divided.total).toBe(whole.total);
      for (const line of whole.lines) {
        const parts = divided.lines.filter(({ key }) => key.startsWith(`${line.key}/payer `));
        expect(sum(parts.map(({ amount }) => amount))).toBe(line.amount);
      }
    });
  });
});

describe('no minute', () => {
  const plain = tariffWith(
    pools,
    certainly(fc.constant(clause('hours', 'hourly', { price: '1', increment: 1 }))),
  );

  it('is charged twice, and none is lost, between hours covered, packages and hours charged', () => {
    holds([playedFacts, plain], (facts, tariff) => {
      const bill = price(facts, tariff);
      for (const call of facts.calls) expect(minutesOf(call.id, bill)).toBe(playedMinutes(call));
    });
  });
});

describe('a longer call', () => {
  const growing = tariffWith(prices, pools, premiums, sums, one(taxed('per total')));

  it('never costs less', () => {
    holds([playedFacts, growing, fc.nat(), minutes(180)], (facts, tariff, which, more) => {
      const index = which % facts.calls.length;
      const calls = facts.calls.map((call, at) => (at === index ? longer(call, more) : call));
      expect(price({ ...facts, calls }, tariff).total).toBeGreaterThanOrEqual(price(facts, tariff).total);
    });
  });
});

describe('cancelling with more notice', () => {
  const falling = tariffWith(prices, pools, premiums, sums, certainly(descending), one(taxed('per total')));

  it('never costs more, for one call', () => {
    holds([playedFacts, falling, fc.nat(), instant, minutes(20_000)], (facts, tariff, which, at, more) => {
      const fallen = (word: Temporal.ZonedDateTime) => {
        const calls = facts.calls.map((call, index) =>
          index === which % facts.calls.length ? cancelled(call, word) : call,
        );
        return price({ ...facts, calls }, tariff).total;
      };
      expect(fallen(at.subtract({ minutes: more }))).toBeLessThanOrEqual(fallen(at));
    });
  });

  it('never costs more, for the whole engagement', () => {
    holds([playedFacts, falling, instant, minutes(20_000)], (facts, tariff, at, more) => {
      const fallen = (word: Temporal.ZonedDateTime) =>
        price({ ...facts, calls: facts.calls.map((call) => cancelled(call, word)) }, tariff).total;
      expect(fallen(at.subtract({ minutes: more }))).toBeLessThanOrEqual(fallen(at));
    });
  });
});

describe('an unrelated call', () => {
  const byTheCall = tariffWith(
    (of) => prices(of).map((clauses) => clauses.filter(({ id }) => id !== 'recital')),
    premiums,
    journeys,
  );

  it('changes no other line, where nothing is reckoned over several calls', () => {
    holds([playedFacts, byTheCall, callArb.map(played)], (facts, tariff, another) => {
      const before = price(facts, tariff).lines;
      const after = price({ ...facts, calls: [...facts.calls, { id: 'another', ...another }] }, tariff).lines;
      const others = after.filter(({ calls }) => !calls.includes('another'));
      expect(byKey(others)).toEqual(byKey(before));
    });
  });
});

describe('the order in which clauses are written', () => {
  const poolless = tariffWith(
    prices,
    premiums,
    sums,
    journeys,
    one(descending),
    one(taxed('per total')),
    one(deposit),
  );

  it('changes no total, where no two draw on the same calls', () => {
    holds([facts, poolless, fc.integer()], (facts, tariff, seed) => {
      const turned = tariffOf(tariff.currency, dealt(tariff.written.clauses, seed));
      expect(price(facts, turned).total).toBe(price(facts, tariff).total);
    });
  });
});

describe('a currency', () => {
  it('takes a price of as many decimals as it has, and refuses one more', () => {
    holds(
      [money, fc.integer({ min: 0, max: 99_999 }), fc.integer({ min: 0, max: 5 })],
      (of, figures, decimals) => {
        const text = decimals === 0 ? String(figures) : `${figures}.${'1'.repeat(decimals)}`;
        const hours = clause('hours', 'hourly', { price: text });
        const answer = readTariff({
          name: 'Dealt',
          currency: of,
          version: 1,
          from: '2026-01-01',
          clauses: [hours],
        });
        expect(refused(answer)).toBe(decimals > minorDigits(of));
      },
    );
  });

  it('is that of the tariff on every statement, and its amounts read back from their text', () => {
    holds([facts, tariff], (facts, tariff) => {
      const bill = price(facts, tariff);
      expect(bill.currency).toBe(tariff.currency);
      for (const { amount } of bill.lines)
        expect(granted(fromDecimal(toDecimal(amount, bill.currency), bill.currency))).toBe(amount);
    });
  });
});

/* Moves. */

function longer(call: Call, more: number): Call {
  if (call.standing.is !== 'played') return call;
  const { start, end } = call.standing.times;
  return { ...call, standing: { is: 'played', times: { start, end: end.add({ minutes: more }) } } };
}

function cancelled(call: Call, at: Temporal.ZonedDateTime): Call {
  return { ...call, standing: { is: 'cancelled', at, by: 'payer', reason: 'other', wasAgreed: true } };
}

function shuffled(facts: Facts, seed: number): Facts {
  return {
    ...facts,
    calls: dealt(facts.calls, seed),
    legs: dealt(facts.legs, seed),
    costs: dealt(facts.costs, seed),
    circumstances: dealt(facts.circumstances, seed),
    holidays: new Set(dealt([...facts.holidays], seed)),
  };
}

/** The same things in an order that a seed decides. */
function dealt<T>(things: readonly T[], seed: number): T[] {
  return things
    .map((thing, index) => ({ thing, at: Math.imul(seed + index * 7919, 2654435761) >>> 0 }))
    .toSorted((a, b) => a.at - b.at)
    .map(({ thing }) => thing);
}

function byKey(lines: readonly Line[]): Line[] {
  return lines.toSorted((a, b) => (a.key < b.key ? -1 : 1));
}

/** The minutes of a call that a statement covers, includes or charges, wherever it says so. */
function minutesOf(call: string, bill: Statement): number {
  const drawn = bill.entitlements.flatMap(({ draws }) => draws).filter((draw) => draw.call === call);
  const packs = bill.lines.filter(({ category }) => category === 'package');
  const included = packs.flatMap(({ calls, facts }) =>
    calls.flatMap((id, index) => (id === call ? [facts[index]?.value ?? ''] : [])),
  );
  const charged = bill.lines.filter(({ clause, calls }) => clause === 'hours' && calls.includes(call));
  return (
    drawn.reduce((sum, { minutes }) => sum + minutes, 0) +
    included.reduce((sum, said) => sum + minutesSaid(said), 0) +
    charged.reduce((sum, { quantity }) => sum + quantity.count, 0)
  );
}

/** `1.25 h` and `50 min` as minutes. */
function minutesSaid(text: string): number {
  const [figure = '', unit] = text.split(' ');
  return unit === 'h' ? Number(figure) * 60 : Number(figure);
}
