// Fee policies that institutions, unions, competitions and pianists have published, said as tariffs, give the sums
// worked out by hand from them. The source of each stands beside its scenarios.

import { Temporal } from '@colla/calendar';
import { fromDecimal, toDecimal } from '@colla/money';
import { granted } from '@colla/refusal';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { dueOn } from '../due.ts';
import { type Given, given } from '../given.ts';
import type { Line } from '../line.ts';
import { POUNDS } from '../priced.ts';
import { type Statement, statement } from '../statement.ts';
import { readTariff, type Tariff, withChoices, writtenTariffSchema } from '../tariff.ts';

/** A published line, and the clauses (for these calls, to this payer) that charge it here. */
const expectedLine = z.strictObject({
  what: z.string(),
  of: z.array(z.string()).min(1),
  calls: z.array(z.int()).optional(),
  payer: z.string().optional(),
  amount: z.string(),
});

const scenarioSchema = z.strictObject({
  name: z.string(),
  tariff: z.string().optional(),
  choices: z.record(z.string(), z.string()).default({}),
  engagements: z.array(z.strictObject({ times: z.int().default(1), given: z.custom<Given>() })).min(1),
  lines: z.array(expectedLine).default([]),
  total: z.string().optional(),
  /** Hours drawn from entitlements, where the policy counts hours and not money. */
  hours: z.number().optional(),
  /** The calls that are covered, where the policy counts occasions. */
  occasions: z.array(z.string()).optional(),
  /** Parts in which the total is paid. */
  instalments: z.array(z.string()).optional(),
  /** The day on which it is to be paid, by what is known without an invoice. */
  due: z.string().optional(),
  /** Hours that lapse. */
  lapsed: z.number().optional(),
  /** By how many days the music came late. */
  daysLate: z.int().optional(),
  byPayer: z.record(z.string(), z.string()).default({}),
  deposit: z.string().optional(),
  gate: z.literal(true).optional(),
  /** What was paid before; the total is what is left. */
  paid: z.string().default('0'),
  /** Calls that the policy leaves without a price. */
  unpriced: z.int().default(0),
  /** A figure that the policy leaves to private agreement, and the scenario supplies. */
  assumed: z.string().optional(),
});
type Scenario = z.output<typeof scenarioSchema>;

const policySchema = z.strictObject({
  source: z.strictObject({ publisher: z.string(), title: z.string(), year: z.string() }),
  tariffs: z.array(writtenTariffSchema.required({ note: true })).min(1),
  scenarios: z.array(scenarioSchema).min(1),
});

const asOf = Temporal.ZonedDateTime.from('2026-07-01T12:00[Europe/London]');
const policies = Object.values(import.meta.glob<unknown>('./*.json', { eager: true, import: 'default' })).map(
  (policy) => policySchema.parse(policy),
);

describe.each(policies.map((policy) => [sourceOf(policy), policy] as const))('%s', (_, policy) => {
  describe.each(policy.scenarios.map((scenario) => [scenario.name, scenario] as const))(
    '%s',
    (_, scenario) => {
      const written = policy.tariffs.find(({ name }) => name === scenario.tariff) ?? policy.tariffs[0];
      const tariff = granted(withChoices(granted(readTariff(written)), scenario.choices));
      const bills = scenario.engagements.flatMap(({ times, given }) => repeat(times, priced(given, tariff)));
      const money = (amount: bigint) => toDecimal(amount, tariff.currency);
      const all = (part: (bill: Statement) => bigint) => bills.reduce((sum, bill) => sum + part(bill), 0n);

      if (scenario.total !== undefined) {
        it(`comes to ${scenario.total}`, () => {
          const paid = granted(fromDecimal(scenario.paid, tariff.currency));
          expect(money(all(({ total }) => total) - paid)).toBe(scenario.total);
        });
      }

      if (scenario.hours !== undefined) {
        it(`comes to ${scenario.hours} hours`, () => {
          const used = all((bill) => BigInt(bill.entitlements.reduce((sum, drawn) => sum + drawn.used, 0)));
          expect(Number(used) / 60).toBe(scenario.hours);
        });
      }

      if (scenario.occasions !== undefined) {
        it(`covers ${scenario.occasions.join(', ')}`, () => {
          const covered = bills.flatMap((bill) => bill.entitlements.flatMap(({ draws }) => draws));
          expect(covered.map(({ call }) => nameOf(call, scenario))).toEqual(scenario.occasions);
        });
      }

      if (scenario.instalments !== undefined) {
        it(`is paid in ${scenario.instalments.length} parts`, () => {
          const parts = bills.flatMap((bill) => bill.payment?.instalments ?? []);
          expect(parts.map(({ amount }) => money(amount))).toEqual(scenario.instalments);
        });
      }

      if (scenario.due !== undefined) {
        it(`is to be paid by ${scenario.due}`, () => {
          const days = bills.map((bill, index) => dayOf(bill, scenario.engagements[index]?.given ?? {}));
          expect(days).toEqual([scenario.due]);
        });
      }

      if (scenario.lapsed !== undefined) {
        it(`lets ${scenario.lapsed} hours lapse`, () => {
          const lapsed = bills.flatMap((bill) => bill.entitlements.map((drawn) => drawn.lapsed));
          expect(lapsed.reduce((sum, minutes) => sum + minutes, 0) / 60).toBe(scenario.lapsed);
        });
      }

      if (scenario.daysLate !== undefined) {
        it(`has its music ${scenario.daysLate} days late`, () => {
          expect(bills.flatMap(({ late }) => late.map(({ daysLate }) => daysLate))).toEqual([
            scenario.daysLate,
          ]);
        });
      }

      it.each(scenario.lines.map((line) => [line.what, line] as const))('%s', (_, line) => {
        expect(money(all((bill) => charged(bill, line)))).toBe(line.amount);
      });

      it.each(Object.entries(scenario.byPayer))('%s pays %s', (payer, total) => {
        const owed = all((bill) => bill.payers.find((sum) => sum.payer === payer)?.total ?? 0n);
        expect(money(owed)).toBe(total);
      });

      it('charges nothing that the policy does not, and leaves no call without a price', () => {
        const lines = bills.flatMap((bill) => bill.lines).filter((line) => line.amount !== 0n);
        const claims = lines.map(
          (line) => scenario.lines.filter((expected) => claimed(line, expected)).length,
        );
        expect(claims.filter((count) => count !== 1)).toEqual([]);
        expect(bills.flatMap((bill) => bill.unpriced)).toHaveLength(scenario.unpriced);
      });

      if (scenario.deposit !== undefined || scenario.gate) {
        it('asks for its deposit, and says whether playing waits for the money', () => {
          const [bill] = bills;
          expect(bill?.deposit && money(bill.deposit.amount)).toBe(scenario.deposit);
          expect(bill?.payment?.gate ?? false).toBe(scenario.gate ?? false);
        });
      }
    },
  );
});

function dayOf({ payment }: Statement, facts: Given): string | undefined {
  return payment && dueOn(payment.due, given(facts, POUNDS))?.toString();
}

/** A call by its label, or its kind. */
function nameOf(id: string, { engagements }: Scenario): string {
  const calls = engagements.flatMap(({ given: short }) => given(short, POUNDS).calls);
  const call = calls.find((call) => call.id === id);
  return call?.label ?? call?.kind ?? id;
}

function sourceOf({ source: { publisher, title, year } }: z.output<typeof policySchema>): string {
  return `${publisher}, “${title}” (${year})`;
}

function priced(facts: Given, tariff: Tariff): Statement {
  return statement(given(facts, tariff.currency), { tariff, locale: 'en-GB' }, asOf);
}

function repeat<T>(times: number, one: T): T[] {
  return Array.from({ length: times }, () => one);
}

function charged(bill: Statement, expected: Scenario['lines'][number]): bigint {
  const lines = bill.lines.filter((line) => claimed(line, expected));
  const taxes = bill.taxes.filter(({ clause }) => expected.of.includes(clause));
  return [...lines, ...taxes].reduce((sum, { amount }) => sum + amount, 0n);
}

function claimed(line: Line, { of, calls, payer }: Scenario['lines'][number]): boolean {
  if (!of.includes(line.clause) || (payer !== undefined && line.payer !== payer)) return false;
  return calls === undefined || line.calls.every((id) => calls.includes(Number(id.slice(1))));
}
