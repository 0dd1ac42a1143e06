// A supplement: a sum or a share on top, for each call, day or engagement that meets a condition.

import { clauseKind } from '../kind.ts';
import { adjustmentSchema, applyAdjustment, sayAdjustment } from './adjustment.ts';

export const supplement = clauseKind({
  kind: 'supplement',
  title: 'Supplement',
  help: 'Adds a sum or a share for the calls that meet a condition, such as playing on a Sunday or playing alone.',
  schema: adjustmentSchema,
  rivalry: () => undefined,
  sentence: (terms, said) => sayAdjustment(terms, said, 'more'),
  names: (terms) => terms.on ?? [],
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
      case: 'Health is 7.25 a call and at most 20.00 together',
      terms: { what: 'Health', by: { as: 'amount', amount: '7.25', each: 'call' }, most: '20.00' },
      given: { calls: ['rehearsal 60', 'rehearsal 60', 'rehearsal 60'] },
      owed: '20.00',
    },
  ],
});
