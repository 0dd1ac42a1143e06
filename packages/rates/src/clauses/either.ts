// The lower or the higher of two ways of charging: the hours or the day, mileage or the train fare, a share or a sum.

import { z } from 'zod';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { EACH } from '../occasion.ts';
import { sayCharges, sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';

const schema = perCurrency(() =>
  z.strictObject({
    keep: z.enum(['lower', 'higher']).meta({ title: 'What holds is the' }),
    ways: z
      .array(
        z.strictObject({
          of: z
            .array(z.string().min(1))
            .min(1)
            .max(20)
            .readonly()
            .meta({ title: 'What these clauses charge', unit: 'clause' }),
        }),
      )
      .min(2)
      .max(6)
      .readonly()
      .meta({ title: 'Ways of charging' }),
    each: z.enum(EACH).default('engagement').meta({ title: 'Weighed for each' }),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const either = clauseKind({
  kind: 'either',
  title: 'The lower or the higher',
  help: 'Of two ways of charging only one holds: the hours or the day, mileage or the fare, a share or a sum, whichever is lower or higher.',
  schema,
  rivalry: () => undefined,
  whole: true,
  sentence,
  mentions: ({ ways }) => ways.flatMap(({ of }) => of),
  contradictions: ({ ways }) => {
    const named = ways.flatMap(({ of }) => of);
    return new Set(named).size < named.length
      ? ['One clause is named twice: a clause belongs to one way of charging only.']
      : [];
  },
  ways: ({ keep, each, ways }) => ({ keep, each, ways: ways.map(({ of }) => of) }),
  phases: {},
  examples: [
    {
      case: 'It charges nothing itself: of three hours at 40.00 and a day at 100.00 the day holds',
      terms: { keep: 'lower', ways: [{ of: ['hours'] }, { of: ['day'] }], each: 'day' },
      given: { calls: ['rehearsal 180'] },
      with: [
        { id: 'hours', kind: 'hourly', for: {}, terms: { price: '40.00' } },
        { id: 'day', kind: 'fixed', for: {}, terms: { price: '100.00', each: 'day' } },
      ],
      owed: '0.00',
      also: { payers: { payer: '100.00' } },
    },
    {
      case: 'The fare of 31.00 or 60 km at 0.40, whichever is lower: 24.00 for the way',
      terms: { keep: 'lower', ways: [{ of: ['fare'] }, { of: ['way'] }] },
      given: { legs: ['60 km'], costs: ['Train fare 31.00'] },
      with: [
        { id: 'fare', kind: 'cost', for: {}, terms: {} },
        { id: 'way', kind: 'travel', for: {}, terms: { perUnit: '0.40' } },
      ],
      owed: '0.00',
      also: { payers: { payer: '24.00' } },
    },
    {
      case: 'A quarter of a fee of 500.00 or 100.00 for the broadcast, whichever is higher: 500.00 and 125.00',
      terms: { keep: 'higher', ways: [{ of: ['share'] }, { of: ['sum'] }] },
      given: { calls: ['recital 60'] },
      with: [
        { id: 'fee', kind: 'fixed', for: {}, terms: { price: '500.00' } },
        {
          id: 'share',
          kind: 'supplement',
          for: {},
          terms: { what: 'Broadcast', by: { as: 'share', share: 2500 }, on: ['fee'] },
        },
        {
          id: 'sum',
          kind: 'supplement',
          for: {},
          terms: { what: 'Broadcast', by: { as: 'amount', amount: '100.00', each: 'engagement' } },
        },
      ],
      owed: '0.00',
      also: { payers: { payer: '625.00' } },
    },
  ],
});

function sentence({ keep, ways, each }: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const conditions = sayConditions(said.for, voice);
  const otherwise = conditions === '' ? '' : `; otherwise ${sayCharges(ways[0]?.of, voice)} holds`;
  const weighed = each === 'engagement' ? '' : `, for each ${each}`;
  return `The ${keep} of ${voice.list(ways.map(({ of }) => sayCharges(of, voice)))} holds${conditions}${weighed}${otherwise}.`;
}
