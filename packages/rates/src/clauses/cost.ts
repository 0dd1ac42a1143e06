// Costs passed on: what was really paid for the engagement, with or without a share for the trouble.

import { z } from 'zod';
import { shareField, wordsField } from '../fields.ts';
import { fitsEngagement } from '../fit.ts';
import { clauseKind, perCurrency } from '../kind.ts';
import { capital, sayConditions } from '../phrases.ts';

const schema = perCurrency(() =>
  z.strictObject({
    what: wordsField('Called').default('Costs, such as scores, fares and room hire'),
    handling: shareField('A share on top for handling').default(0),
  }),
);

export const cost = clauseKind({
  kind: 'cost',
  title: 'Costs passed on',
  help: 'Passes on what was paid for the engagement: scores, fares, room hire.',
  schema,
  rivalry: () => undefined,
  once: true,
  whole: true,
  sentence: (terms, said) => {
    const handling =
      terms.handling > 0 ? `, with ${said.voice.share(terms.handling)} on top for handling` : '';
    return `${capital(terms.what)}${sayConditions(said.for, said.voice)}: passed on as paid${handling}.`;
  },
  phases: {
    travel: (terms, desk, clause) => {
      if (!fitsEngagement(clause.for, desk.facts)) return;
      for (const { id, on, what, amount } of desk.costs()) {
        const share = 10_000 + terms.handling;
        desk.charge(clause, {
          category: 'cost',
          what,
          on,
          about: id,
          facts: [{ name: 'paid', value: desk.voice.money(amount) }],
          quantity: { count: share, of: 10_000 },
          unit: 'cost',
          rate: amount,
          ...(terms.handling > 0 ? { said: desk.voice.share(share) } : {}),
        });
      }
    },
  },
  examples: [
    { case: 'A score of 12.00 is passed on', terms: {}, given: { costs: ['Score 12.00'] }, owed: '12.00' },
    {
      case: 'Room hire of 30.00 with a tenth for handling',
      terms: { handling: 1000 },
      given: { costs: ['Room hire 30.00'] },
      owed: '33.00',
    },
  ],
});
