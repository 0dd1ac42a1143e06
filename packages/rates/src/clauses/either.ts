// The lower or the higher of two ways of charging: the hours or the day, mileage or the train fare, a share or a sum.

import { z } from 'zod';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { EACH } from '../occasion.ts';
import { sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';
import { sayWay } from '../ways.ts';

const schema = perCurrency(() =>
  z.strictObject({
    keep: z.enum(['lower', 'higher']).meta({ title: 'What holds is the' }),
    ways: z
      .array(
        z.strictObject({
          of: z
            .array(z.string().min(1))
            .max(20)
            .readonly()
            .default([])
            .meta({ title: 'With these clauses (without any where none is named)', unit: 'clause' }),
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
  help: 'Of two ways of charging only one holds: the hours or the day, mileage or the fare, a share or a sum, whichever is lower or higher. Where no fare is told, there is none to weigh.',
  schema,
  rivalry: () => undefined,
  whole: true,
  sentence,
  mentions: ({ ways }) => ways.flatMap(({ of }) => of),
  contradictions: ({ ways }) => {
    const named = ways.flatMap(({ of }) => of);
    if (new Set(named).size < named.length)
      return ['One clause is named twice: a clause belongs to one way of charging only.'];
    return ways.filter(({ of }) => of.length === 0).length > 1
      ? ['Two ways name no clause, and are one: name the clauses of one of them.']
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
    {
      case: 'The package of 320.00 with five hours, or three hours at 50.00 without it, whichever is lower: 150.00',
      terms: { keep: 'lower', ways: [{ of: ['pack'] }, {}] },
      given: { calls: ['3 × rehearsal 60'] },
      with: [
        { id: 'hours', kind: 'hourly', for: {}, terms: { price: '50.00' } },
        {
          id: 'pack',
          kind: 'package',
          for: {},
          terms: { price: '320.00', what: 'Package', includes: [{ of: {}, minutes: 300 }] },
        },
      ],
      owed: '0.00',
      also: { payers: { payer: '150.00' } },
    },
  ],
});

function sentence({ keep, ways, each }: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const conditions = sayConditions(said.for, voice);
  const [first] = ways;
  const otherwise = conditions === '' ? '' : `; otherwise ${sayWay(first?.of ?? [], voice)}`;
  const weighed = each === 'engagement' ? '' : `, for each ${each}`;
  const these = voice.either(ways.map(({ of }) => sayWay(of, voice)));
  return `The fee is reckoned ${these}, whichever is ${keep}${weighed}${conditions}${otherwise}.`;
}
