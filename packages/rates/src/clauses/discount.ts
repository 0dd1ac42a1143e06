// A discount: a sum or a share off, for what meets a condition.

import { clauseKind } from '../kind.ts';
import {
  type Adjustment,
  adjustmentContradictions,
  adjustmentEach,
  adjustmentSchema,
  applyAdjustment,
  sayAdjustment,
} from './adjustment.ts';

export const discount = clauseKind({
  kind: 'discount',
  title: 'Discount',
  help: 'Takes a sum or a share off the calls that meet a condition, such as a student pianist who plays.',
  schema: adjustmentSchema,
  rivalry: () => undefined,
  each: adjustmentEach,
  sentence: (terms, said) => sayAdjustment(terms, said, 'less'),
  names: (terms) => terms.on ?? [],
  contradictions: (terms) => [...adjustmentContradictions(terms), ...moreThanAll(terms)],
  phases: {
    discounts: (terms, desk, clause) =>
      applyAdjustment(terms, desk, clause, { category: 'discount', sign: -1n }),
  },
  examples: [
    {
      case: 'A sum off the engagement',
      terms: { what: 'Returning soloist', by: { as: 'amount', amount: '10.00', each: 'engagement' } },
      given: { calls: ['rehearsal 60'] },
      owed: '-10.00',
    },
    {
      case: 'A student pianist costs a quarter less: of 64.00 and 20.00, with its Sunday supplement of 10.00',
      for: { pianists: ['student'] },
      terms: { what: 'Student pianist', by: { as: 'share', share: 2500 } },
      given: { calls: ['exam 20 on 2026-03-08', 'rehearsal 30 on 2026-03-09'], pianistClass: 'student' },
      with: [
        { id: 'exam', kind: 'fixed', for: { calls: ['exam'] }, terms: { price: '64.00' } },
        { id: 'hours', kind: 'hourly', for: { calls: ['rehearsal'] }, terms: { price: '40.00' } },
        {
          id: 'sunday',
          kind: 'supplement',
          for: { days: ['sunday'] },
          terms: { what: 'Sunday', by: { as: 'amount', amount: '10.00' } },
        },
      ],
      owed: '-23.50',
    },
  ],
});

function moreThanAll({ by }: Adjustment): string[] {
  return by.as === 'share' && by.share > 10_000
    ? ['It takes off more than the whole: give a share of 100 % or less.']
    : [];
}
