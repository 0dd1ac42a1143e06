// A discount: a sum or a share off, for what meets a condition.

import { clauseKind } from '../kind.ts';
import { adjustmentSchema, applyAdjustment, sayAdjustment } from './adjustment.ts';

export const discount = clauseKind({
  kind: 'discount',
  title: 'Discount',
  help: 'Takes a sum or a share off the calls that meet a condition, such as a student pianist who plays.',
  schema: adjustmentSchema,
  rivalry: () => undefined,
  sentence: (terms, said) => sayAdjustment(terms, said, 'less'),
  names: (terms) => terms.on ?? [],
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
  ],
});
