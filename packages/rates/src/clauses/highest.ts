// Of several premiums that meet, only the highest counts: a Sunday that is a public holiday is paid once.

import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { fitsEngagement } from '../fit.ts';
import { groupsOf } from '../groups.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import type { Line } from '../line.ts';
import { sayConditions } from '../phrases.ts';

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
  help: 'Of several supplements that meet on one call, only the highest is charged; without it they are added.',
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
  ],
});

/** Takes away the lines of all but the clause that charges most for the same calls and payer; it says what it outdid. */
function keepHighest({ of }: Terms, desk: Desk, clause: ClauseHead): void {
  if (!fitsEngagement(clause.for, desk.facts)) return;
  const meeting = groupsOf(
    desk.lines.filter((line) => of.includes(line.clause)),
    ({ calls, payer }) => JSON.stringify([calls, payer]),
  );
  const instead = new Map<Line, Line | undefined>();
  for (const lines of meeting.values()) decide(lines, desk, instead);
  desk.lines = desk.lines.flatMap((line) => {
    const kept = instead.has(line) ? instead.get(line) : line;
    return kept ? [kept] : [];
  });
}

/** For each line of calls on which premiums meet, what stands in its place; of two alike the first named stays. */
function decide(lines: readonly Line[], { voice }: Desk, instead: Map<Line, Line | undefined>): void {
  const sums = groupsOf(lines, ({ clause }) => clause);
  if (sums.size < 2) return;
  const sumOf = (clause: string) => (sums.get(clause) ?? []).reduce((sum, { amount }) => sum + amount, 0n);
  const best = [...sums.keys()].reduce((one, other) => (sumOf(other) > sumOf(one) ? other : one));
  const outdone = lines
    .filter(({ clause }) => clause !== best)
    .map(({ what, amount }) => ({ name: 'not added', value: `${what} ${voice.money(amount)}` }));
  for (const line of lines)
    instead.set(line, line.clause === best ? { ...line, facts: [...line.facts, ...outdone] } : undefined);
}
