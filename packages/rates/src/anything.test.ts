// Whatever can be read as a tariff can be said, priced and read again.

import { refused } from '@colla/refusal';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { anyClauses } from '../dealt/anything.ts';
import { facts, midnight } from '../dealt/facts.ts';
import { exportTariff, importTariff } from './exchange.ts';
import { statement } from './statement.ts';
import { readTariff, sentencesOf } from './tariff.ts';

const asOf = midnight.add({ days: 20 });

/** What is left of some clauses when those that are refused are taken out, one after another. */
const readable = anyClauses.map((clauses) => {
  for (let kept = clauses; ; ) {
    const tariff = read(kept);
    if (!refused(tariff)) return tariff;
    const [, wrong] = /^\/clauses\/(\d+)/.exec(tariff.field ?? '') ?? [];
    kept = kept.filter((_, place) => place !== Number(wrong));
  }
});

function read(clauses: readonly unknown[]) {
  return readTariff({ name: 'Anything', currency: 'EUR', version: 1, from: '2026-01-01', clauses });
}

it('whatever can be read can be priced: its lines have names of their own and sum to its total', () => {
  fc.assert(
    fc.property(readable, facts, (tariff, facts) => {
      const bill = statement(facts, { tariff, locale: 'en-GB' }, asOf);
      const added = bill.taxes.filter(({ inside }) => !inside);
      const sum = [...bill.lines, ...added].reduce((sum, { amount }) => sum + amount, 0n);
      expect(bill.total).toBe(sum);
      expect(new Set(bill.lines.map(({ key }) => key)).size).toBe(bill.lines.length);
      for (const { arithmetic, what } of bill.lines)
        expect(`${what}: ${arithmetic}`).not.toMatch(/undefined|NaN/);
    }),
    { numRuns: 400 },
  );
});

it('and comes to the same in whatever order its facts were entered', () => {
  fc.assert(
    fc.property(readable, facts, (tariff, facts) => {
      const turned = {
        ...facts,
        calls: facts.calls.toReversed(),
        legs: facts.legs.toReversed(),
        costs: facts.costs.toReversed(),
        circumstances: facts.circumstances.toReversed(),
      };
      const under = { tariff, locale: 'en-GB' };
      expect(statement(turned, under, asOf)).toEqual(statement(facts, under, asOf));
    }),
    { numRuns: 200 },
  );
});

it('and says itself in sentences', () => {
  fc.assert(
    fc.property(readable, (tariff) => {
      for (const { sentence } of sentencesOf(tariff, 'en-GB')) {
        expect(sentence).toMatch(/\.$/);
        expect(sentence).not.toMatch(/undefined|NaN|\[object| {2}| [,.;]|,\s*,/);
      }
    }),
    { numRuns: 400 },
  );
});

it('and written to a file reads back as it was', () => {
  fc.assert(
    fc.property(readable, (tariff) => {
      const file: unknown = JSON.parse(JSON.stringify(exportTariff(tariff)));
      expect(importTariff(file)).toEqual(tariff);
    }),
    { numRuns: 200 },
  );
});
