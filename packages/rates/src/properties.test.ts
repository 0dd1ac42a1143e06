// What holds for every tariff and every engagement. fast-check deals them; a failure prints its seed.

import { Temporal } from '@colla/calendar';
import { type Call, playedMinutes } from '@colla/hours';
import { fromDecimal, minorDigits, toDecimal } from '@colla/money';
import { granted, refused } from '@colla/refusal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { callArb, facts, instant, minutes, played, playedFacts } from '../dealt/facts.ts';
import { asOf, cancelled, holds, price, sum } from '../dealt/holds.ts';
import { deposit, descending, shared, tariff, taxes, uneven } from '../dealt/settling.ts';
import {
  certainly,
  clause,
  journeys,
  money,
  one,
  pools,
  premiums,
  prices,
  sums,
  tariffOf,
  tariffWith,
} from '../dealt/tariffs.ts';
import type { Facts } from './facts.ts';
import type { Line } from './line.ts';
import type { Statement } from './statement.ts';
import { readTariff } from './tariff.ts';

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
  const growing = tariffWith(prices, pools, premiums, sums, taxes);

  it('never costs less', () => {
    holds([playedFacts, growing, fc.nat(), minutes(180)], (facts, tariff, which, more) => {
      const index = which % facts.calls.length;
      const calls = facts.calls.map((call, at) => (at === index ? longer(call, more) : call));
      expect(price({ ...facts, calls }, tariff).total).toBeGreaterThanOrEqual(price(facts, tariff).total);
    });
  });
});

describe('a package', () => {
  const without = tariffWith(certainly(fc.constant(clause('hours', 'hourly', { price: '20' }))));
  const covering = fc.array(
    fc.record(
      { calls: fc.integer({ min: 1, max: 3 }), minutes: minutes(300), minutesEach: minutes(90) },
      { requiredKeys: [] },
    ),
    { minLength: 1, maxLength: 2 },
  );

  it('never costs more than its parts, when it costs no more than the hours it takes', () => {
    holds([playedFacts, without, covering], (facts, tariff, parts) => {
      const includes = parts.map((part) => ({ of: {}, ...part }));
      const free = { what: 'Package', price: '0', includes };
      const priced = (terms: object) =>
        price(facts, tariffOf(tariff.currency, [...tariff.written.clauses, clause('pack', 'package', terms)]))
          .total;
      const apart = price(facts, tariff).total;
      const saved = apart - priced(free);
      expect(saved).toBeGreaterThanOrEqual(0n);
      expect(priced({ ...free, price: toDecimal(saved, tariff.currency) })).toBeLessThanOrEqual(apart);
    });
  });
});

describe('hours covered', () => {
  it('are granted, used, left and lapsed to the minute, and each use is one of a call', () => {
    holds([facts, tariff], (facts, tariff) => {
      for (const { granted, used, left, lapsed, draws, grants } of price(facts, tariff).entitlements) {
        expect(granted).toBe(used + left + lapsed);
        expect(used).toBe(draws.reduce((sum, { minutes }) => sum + minutes, 0));
        expect(Math.min(granted, used, left, lapsed)).toBeGreaterThanOrEqual(0);
        expect(grants.flatMap((grant) => grant.draws)).toEqual(draws);
        for (const [index, grant] of grants.entries()) {
          expect(grant.brought + grant.granted).toBe(grant.used + grant.left + grant.lapsed + grant.passedOn);
          if (index > 0) expect(grant.brought).toBe(grants[index - 1]?.passedOn);
        }
      }
    });
  });
});

describe('cancelling with more notice', () => {
  const falling = tariffWith(prices, pools, premiums, sums, certainly(descending), taxes);

  const reasons = fc.constantFrom('other' as const, 'illness' as const);

  it('never costs more, for one call', () => {
    holds(
      [playedFacts, falling, fc.nat(), instant, minutes(20_000), reasons],
      (facts, tariff, which, at, more, reason) => {
        const fallen = (word: Temporal.ZonedDateTime) => {
          const calls = facts.calls.map((call, index) =>
            index === which % facts.calls.length ? cancelled(call, word, reason) : call,
          );
          return price({ ...facts, calls }, tariff).total;
        };
        expect(fallen(at.subtract({ minutes: more }))).toBeLessThanOrEqual(fallen(at));
      },
    );
  });

  it('never costs more, for the whole engagement', () => {
    holds([playedFacts, falling, instant, minutes(20_000), reasons], (facts, tariff, at, more, reason) => {
      const fallen = (word: Temporal.ZonedDateTime) =>
        price({ ...facts, calls: facts.calls.map((call) => cancelled(call, word, reason)) }, tariff).total;
      expect(fallen(at.subtract({ minutes: more }))).toBeLessThanOrEqual(fallen(at));
    });
  });
});

describe('cancelling', () => {
  const falling = tariffWith(prices, pools, premiums, uneven, taxes);

  it('never costs more than playing, whichever calls fall', () => {
    holds([playedFacts, falling, instant, fc.nat()], (facts, tariff, at, which) => {
      const calls = facts.calls.map((call, index) => ((which >> index) % 2 ? cancelled(call, at) : call));
      expect(price({ ...facts, calls }, tariff).total).toBeLessThanOrEqual(price(facts, tariff).total);
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
  const poolless = tariffWith(prices, premiums, sums, journeys, one(descending), taxes, one(deposit));

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

function longer(call: Call, more: number): Call {
  if (call.standing.is !== 'played') return call;
  const { start, end } = call.standing.times;
  return { ...call, standing: { is: 'played', times: { start, end: end.add({ minutes: more }) } } };
}

function shuffled(facts: Facts, seed: number): Facts {
  return {
    ...facts,
    calls: dealt(facts.calls, seed),
    legs: dealt(facts.legs, seed),
    costs: dealt(facts.costs, seed),
    circumstances: dealt(facts.circumstances, seed),
    ...(facts.moves ? { moves: dealt(facts.moves, seed) } : {}),
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
