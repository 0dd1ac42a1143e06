// What holds, for every tariff and every engagement, of what is done with sums already charged: who pays and who is
// paid, taxes, pardons, hours that roll over, and debts paid late. fast-check deals them; a failure prints its seed.

import { Temporal } from '@colla/calendar';
import { granted, Refusal } from '@colla/refusal';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { facts, instant, playedFacts } from '../dealt/facts.ts';
import { cancelled, holds, price, sum } from '../dealt/holds.ts';
import {
  descending,
  excuse,
  late,
  payeeOf,
  splitOf,
  tariff,
  taxed,
  threeRates,
  twoTaxes,
  withMore,
} from '../dealt/settling.ts';
import {
  certainly,
  clause,
  journeys,
  one,
  pools,
  premiums,
  prices,
  sums,
  tariffOf,
  tariffWith,
} from '../dealt/tariffs.ts';
import { type Debt, latePayment } from './late.ts';
import { POUNDS } from './priced.ts';
import type { Tariff } from './tariff.ts';

const amounts = (of: readonly { readonly amount: bigint }[]) => sum(of.map(({ amount }) => amount));

/** What is charged, before anybody shares it, is paid to others or taxed. */
const apart = tariffWith(prices, pools, premiums, sums, journeys, one(descending));

const NOTHING = new Refusal('rates/none', 'Nothing is said of late payment.', {});

/** A tariff, and further clauses that speak of its own. */
const and = <More>(more: (of: Tariff) => fc.Arbitrary<More>) =>
  apart.chain((tariff) => more(tariff).map((more) => ({ tariff, more })));

describe('what a split names', () => {
  it('is shared to the last unit, and the rest of every line stays where it was', () => {
    holds([facts, and(splitOf)], (facts, { tariff, more }) => {
      const whole = price(facts, tariff);
      const divided = price(facts, withMore(tariff, [more]));
      expect(divided.total).toBe(whole.total);
      for (const line of whole.lines) {
        const parts = divided.lines.filter(
          ({ key }) => key === line.key || ['/payer ', '#'].some((mark) => key.startsWith(line.key + mark)),
        );
        expect(amounts(parts)).toBe(line.amount);
      }
    });
  });
});

describe('what is parted twice', () => {
  it('has a key of its own in every line, so that what was invoiced is found again', () => {
    const twice = (of: Tariff) => fc.tuple(splitOf(of), splitOf(of), payeeOf(of));
    holds([facts, and(twice)], (facts, { tariff, more: [one, other, payee] }) => {
      const { lines } = price(facts, withMore(tariff, [one, { ...other, id: 'again' }, payee]));
      expect(new Set(lines.map(({ key }) => key)).size).toBe(lines.length);
    });
  });
});

describe('what goes to a third party', () => {
  it('and what is charged here are together what is charged where nothing does', () => {
    holds([facts, and(payeeOf)], (facts, { tariff, more }) => {
      const parted = price(facts, withMore(tariff, [more]));
      expect(parted.total + amounts(parted.toOthers)).toBe(price(facts, tariff).total);
    });
  });

  it('is as much where a split comes first, but for a unit of each share', () => {
    const both = (of: Tariff) => fc.tuple(splitOf(of), payeeOf(of));
    holds([facts, and(both)], (facts, { tariff, more: [split, payee] }) => {
      const before = price(facts, withMore(tariff, [payee]));
      const after = price(facts, withMore(tariff, [split, payee]));
      const off = amounts(after.toOthers) - amounts(before.toOthers);
      expect(off < 0n ? -off : off).toBeLessThanOrEqual(BigInt(after.toOthers.length));
      expect(after.total + amounts(after.toOthers)).toBe(before.total + amounts(before.toOthers));
    });
  });
});

describe('taxes', () => {
  const bases = (taxes: readonly { readonly base: bigint }[]) => sum(taxes.map(({ base }) => base));

  it('of several rates of one tax have every charge under one rate', () => {
    holds([facts, and(threeRates)], (facts, { tariff, more }) => {
      const { taxes, lines, net } = price(facts, withMore(tariff, more));
      const inside = taxes.some((tax) => tax.inside);
      expect(bases(taxes)).toBe(inside ? net : amounts(lines));
    });
  });

  it('inside the prices change no total, however many there are', () => {
    holds([facts, and(() => twoTaxes)], (facts, { tariff, more }) => {
      const bill = price(facts, withMore(tariff, more));
      expect(bill.total).toBe(
        bill.taxes.some((tax) => !tax.inside) ? bill.net + bill.tax : price(facts, tariff).total,
      );
      expect(bill.net + bill.tax).toBe(bill.total);
    });
  });

  it('rounded line by line and once differ by no more than a unit a line', () => {
    const lineByLine = and(() => taxed('per line'));
    holds([facts, lineByLine], (facts, { tariff, more }) => {
      const tax = (rounding: string) =>
        price(facts, withMore(tariff, [{ ...more, terms: { ...more.terms, rounding } }])).tax;
      const { lines } = price(facts, tariff);
      const off = tax('per line') - tax('per total');
      expect(off < 0n ? -off : off).toBeLessThanOrEqual(BigInt(lines.length));
    });
  });
});

describe('pardons', () => {
  // Without packages and hours covered: what a pardoned call no longer takes of them goes to another, and may cost more
  // than that one's own price.
  const falling = tariffWith(prices, premiums, sums, certainly(descending));

  it('never make it dearer that calls fall', () => {
    const reason = fc.constantFrom('other' as const, 'illness' as const);
    holds(
      [playedFacts, falling, excuse, instant, fc.nat(), reason],
      (facts, tariff, excused, at, which, reason) => {
        const calls = facts.calls.map((call, index) =>
          (which >> index) % 2 ? cancelled(call, at, reason) : call,
        );
        const owed = (pardon: object | undefined) => {
          const clauses = tariff.written.clauses.map((one) =>
            one.id === 'notice' ? { ...one, terms: { ...one.terms, excused: pardon } } : one,
          );
          return price({ ...facts, calls }, tariffOf(tariff.currency, clauses)).total;
        };
        expect(owed(excused)).toBeLessThanOrEqual(owed(undefined));
      },
    );
  });
});

describe('hours that roll over', () => {
  it('cover no less than hours that lapse', () => {
    const each = fc.constantFrom('day', 'week', 'month', 'term', 'engagement');
    holds([playedFacts, each, fc.integer({ min: 1, max: 400 })], (facts, each, minutes) => {
      const used = (rollsOver: boolean) => {
        const covered = clause('covered', 'entitlement', { minutes, each, rollsOver });
        const [drawn] = price(facts, tariffOf(POUNDS, [covered])).entitlements;
        return drawn?.used ?? 0;
      };
      expect(used(true)).toBeGreaterThanOrEqual(used(false));
    });
  });
});

describe('a debt paid late', () => {
  const due = Temporal.PlainDate.from('2026-03-31');
  const days = fc.integer({ min: 0, max: 400 });

  it('costs nothing on the day it is due, and no less the later it is paid', () => {
    const owing = tariff.chain((of) =>
      late(of.currency).map((interest) => tariffOf(of.currency, [interest])),
    );
    holds(
      [facts, owing, fc.bigInt({ min: 1n, max: 1_000_000n }), days, days],
      (facts, tariff, amount, one, more) => {
        const charge = (after: number) => {
          const debt: Debt = { amount, dueOn: due, on: due.add({ days: after }) };
          return granted(latePayment(facts, { tariff, locale: 'en-GB' }, debt) ?? NOTHING);
        };
        expect(charge(0).total).toBe(0n);
        expect(charge(one + more).total).toBeGreaterThanOrEqual(charge(one).total);
        const { interest, sum: fixed, total } = charge(one);
        expect(interest + fixed).toBe(total);
      },
    );
  });
});
