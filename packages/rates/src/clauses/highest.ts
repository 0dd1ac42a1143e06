// Of several premiums that meet, only the highest counts: a Sunday that is a public holiday is paid once.

import { divideRounded } from '@colla/money';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { fitsEngagement } from '../fit.ts';
import { groupsOf } from '../groups.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import type { Line } from '../line.ts';
import { sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';

const schema = perCurrency(() =>
  z.strictObject({
    of: z
      .array(z.string().min(1))
      .min(2)
      .max(20)
      .readonly()
      .meta({ title: 'Of these clauses', unit: 'clause' }),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const highest = clauseKind({
  kind: 'highest',
  title: 'The highest only',
  help: 'Of several supplements that meet on one call, only the highest is charged; without it they are added. What is charged for several calls at once counts on each by an equal part.',
  schema,
  rivalry: () => undefined,
  whole: true,
  sentence: ({ of }, { voice, for: selector }) =>
    `Where ${voice.list(of.map((id) => `“${id}”`))} meet on one call${sayConditions(selector, voice)}, only the highest of them counts.`,
  names: ({ of }) => of,
  contradictions: ({ of }) =>
    new Set(of).size < of.length ? ['One clause is named twice: name two different ones.'] : [],
  phases: { supplements: keepHighest },
  examples: [
    {
      case: 'On a Sunday that is a public holiday the higher of 25.00 and 40.00 stands, and this clause charges nothing',
      terms: { of: ['sunday', 'holiday'] },
      given: { calls: ['service 60 on 2026-03-08'], holidays: ['2026-03-08'] },
      with: [
        {
          id: 'sunday',
          kind: 'supplement',
          for: { days: ['sunday'] },
          terms: { what: 'Sunday', by: { as: 'amount', amount: '25.00' } },
        },
        {
          id: 'holiday',
          kind: 'supplement',
          for: { days: ['public holiday'] },
          terms: { what: 'Public holiday', by: { as: 'amount', amount: '40.00' } },
        },
      ],
      owed: '0.00',
    },
    {
      case: 'A Sunday of 25.00 a day is 12.50 for each of two services, and gives way to a holiday of 40.00 for each: 80.00',
      terms: { of: ['sunday', 'holiday'] },
      given: {
        calls: ['service 60 on 2026-03-08 at 09:00', 'service 60 on 2026-03-08 at 12:00'],
        holidays: ['2026-03-08'],
      },
      with: [
        {
          id: 'sunday',
          kind: 'supplement',
          for: { days: ['sunday'] },
          terms: { what: 'Sunday', by: { as: 'amount', amount: '25.00', each: 'day' } },
        },
        {
          id: 'holiday',
          kind: 'supplement',
          for: { days: ['public holiday'] },
          terms: { what: 'Public holiday', by: { as: 'amount', amount: '40.00' } },
        },
      ],
      owed: '0.00',
      also: { payers: { payer: '80.00' } },
    },
  ],
});

/** On each call the clause that charges most for it has its line, and says what it outdid; the others lose that call. */
function keepHighest({ of }: Terms, desk: Desk, clause: ClauseHead): void {
  if (!fitsEngagement(clause.for, desk.facts)) return;
  const premiums = desk.lines.filter((line) => of.includes(line.clause));
  const outdone = new Map(premiums.map((line) => [line, new Set<string>()]));
  const over = new Map(premiums.map((line) => [line, new Set<Line>()]));
  for (const meeting of meetings(premiums)) decide(meeting, outdone, over);
  desk.lines = desk.lines.flatMap((line) =>
    leftOf(line, outdone.get(line) ?? NONE, [...(over.get(line) ?? [])], desk.voice),
  );
}

/** The premiums of one payer on one call; those without calls meet on the engagement. */
interface Meeting {
  readonly call: string;
  readonly lines: readonly Line[];
}

function meetings(premiums: readonly Line[]): Meeting[] {
  const places = premiums.flatMap((line) =>
    (line.calls.length > 0 ? line.calls : [WHOLE]).map((call) => ({ call, line })),
  );
  const met = groupsOf(places, ({ call, line }) => JSON.stringify([call, line.payer]));
  return [...met.values()].map((at) => ({ call: at[0]?.call ?? WHOLE, lines: at.map(({ line }) => line) }));
}

/** In the place of a call, for what is charged for none. */
const WHOLE = '';
const NONE: ReadonlySet<string> = new Set();

/** Notes which lines lose a call, and to which; of two alike the first keeps it. */
function decide(
  { call, lines }: Meeting,
  outdone: ReadonlyMap<Line, Set<string>>,
  over: ReadonlyMap<Line, Set<Line>>,
): void {
  const sums = groupsOf(lines, (line) => line.clause);
  const parts = lines.reduce((of, line) => of * callsOf(line), 1n);
  const sumOf = (clause: string) =>
    (sums.get(clause) ?? []).reduce((sum, line) => sum + (line.amount * parts) / callsOf(line), 0n);
  const best = [...sums.keys()].reduce((one, other) => (sumOf(other) > sumOf(one) ? other : one));
  const lost = lines.filter((line) => line.clause !== best);
  for (const line of lost) outdone.get(line)?.add(call);
  for (const kept of sums.get(best) ?? []) for (const line of lost) over.get(kept)?.add(line);
}

/** Among how many a line is shared, by equal parts. */
function callsOf({ calls }: Line): bigint {
  return BigInt(Math.max(1, calls.length));
}

/** A line, its part for the calls it has not lost, or nothing. */
function leftOf(line: Line, lost: ReadonlySet<string>, over: readonly Line[], voice: Voice): Line[] {
  const said = over.map(({ what, amount }) => ({
    name: 'not added',
    value: `${what} ${voice.money(amount)}`,
  }));
  const kept = said.length > 0 ? { ...line, facts: [...line.facts, ...said] } : line;
  if (lost.size === 0) return [kept];
  const calls = line.calls.filter((call) => !lost.has(call));
  if (calls.length === 0) return [];
  const quantity = { count: calls.length, of: line.calls.length };
  const amount = divideRounded(line.amount * BigInt(quantity.count), BigInt(quantity.of));
  const of = `${quantity.count}/${quantity.of} of it = ${voice.money(amount)}`;
  const arithmetic = `${line.arithmetic}; ${of}`;
  return [{ ...kept, calls, quantity, unit: 'part', rate: line.amount, amount, arithmetic }];
}
