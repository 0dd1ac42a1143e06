// A supplement: a sum, a share or a rate on top, for what meets a condition.

import { clauseKind } from '../kind.ts';
import {
  adjustmentContradictions,
  adjustmentEach,
  adjustmentSchema,
  applyAdjustment,
  sayAdjustment,
} from './adjustment.ts';

export const supplement = clauseKind({
  kind: 'supplement',
  title: 'Supplement',
  help: 'Adds a sum, a share, or a rate for time beyond, where a condition is met: a Sunday, playing alone, an evening that runs over.',
  schema: adjustmentSchema,
  rivalry: () => undefined,
  each: adjustmentEach,
  sentence: (terms, said) => sayAdjustment(terms, said, 'more'),
  names: (terms) => terms.on ?? [],
  contradictions: adjustmentContradictions,
  phases: {
    supplements: (terms, desk, clause) =>
      applyAdjustment(terms, desk, clause, { category: 'supplement', sign: 1n }),
  },
  examples: [
    {
      case: 'A recital on a Sunday is 25.00 more',
      for: { days: ['sunday'] },
      terms: { what: 'Sunday', by: { as: 'amount', amount: '25.00', each: 'call' } },
      given: { calls: ['recital 60 on 2026-03-08', 'recital 60 on 2026-03-09'] },
      owed: '25.00',
    },
    {
      case: 'An evening booked for three hours runs 80 minutes over: an hour and a half at 100.00',
      for: { calls: ['recital'] },
      terms: { what: 'Overrun', by: { as: 'time', price: '100.00', increment: 30 } },
      given: { calls: ['recital 180 +80'] },
      owed: '150.00',
    },
    {
      case: 'A dinner from 21:00 to 00:30 has an hour and a half after eleven, at 20.00 more an hour',
      terms: {
        what: 'Late',
        by: {
          as: 'time',
          price: '20.00',
          of: 'hours of the day',
          between: { from: '23:00', until: '06:00' },
        },
      },
      given: { calls: ['service 210 at 21:00'] },
      owed: '30.00',
    },
    {
      case: 'The soloist comes 25 minutes late, and waiting is 30.00 an hour by started quarters',
      terms: { what: 'Waiting', by: { as: 'time', price: '30.00', of: 'waiting' } },
      given: { calls: ['rehearsal 60 late 25'] },
      owed: '15.00',
    },
    {
      case: 'A session of three hours at 240.00 runs 40 minutes over: 45 at time and a half are 90.00',
      terms: { what: 'Overtime', by: { as: 'multiple of the fee', multiple: 15_000 }, on: ['session'] },
      given: { calls: ['recording 180 +40'] },
      with: [{ id: 'session', kind: 'fixed', for: {}, terms: { price: '240.00' } }],
      owed: '90.00',
    },
    {
      case: 'What lies beyond eight hours of a day, here one hour of nine, is 15.00 more an hour',
      terms: { what: 'Overtime', by: { as: 'time', price: '15.00', beyond: 480, each: 'day' } },
      given: {
        calls: [
          'rehearsal 300 on 2026-03-04 at 09:00',
          'rehearsal 240 on 2026-03-04 at 15:00',
          'rehearsal 480 on 2026-03-05',
        ],
      },
      owed: '15.00',
    },
    {
      case: 'Waiting beyond a quarter of an hour is 40.00 an hour: of 40 minutes 25, by started quarters',
      terms: { what: 'Waiting', by: { as: 'time', price: '40.00', of: 'waiting', beyond: 15 } },
      given: { calls: ['rehearsal 60 late 40'] },
      owed: '20.00',
    },
    {
      case: 'A tenth for the pension, taken once of 3 × 60.55 = 181.65, is 18.17 (three tenths rounded each were 18.18)',
      terms: { what: 'Pension', by: { as: 'share', share: 1000, together: true }, on: ['hours'] },
      given: { calls: ['3 × rehearsal 60'] },
      with: [{ id: 'hours', kind: 'hourly', for: {}, terms: { price: '60.55' } }],
      owed: '18.17',
    },
    {
      case: 'Sunday and evening are each a quarter of the fee of 80.00, not one of the other',
      for: { days: ['sunday'] },
      terms: { what: 'Sunday', by: { as: 'share', share: 2500 } },
      given: { calls: ['rehearsal 60 on 2026-03-08'] },
      with: [
        { id: 'hours', kind: 'hourly', for: {}, terms: { price: '80.00' } },
        {
          id: 'evening',
          kind: 'supplement',
          for: {},
          terms: { what: 'Evening', by: { as: 'share', share: 2500 } },
        },
      ],
      owed: '20.00',
    },
  ],
});
