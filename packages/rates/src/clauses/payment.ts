// The payment term: when an invoice is due, and whether playing waits for the money.

import { z } from 'zod';
import { sayDue } from '../due.ts';
import { eventDaySchema } from '../fields.ts';
import { clauseKind, perCurrency } from '../kind.ts';
import { fitsEngagement, sayConditions } from '../selector.ts';

const schema = perCurrency(() =>
  z.strictObject({
    due: z.array(eventDaySchema).min(1).max(4).readonly().meta({ title: 'Due on the earliest of' }),
    gate: z.boolean().default(false).meta({ title: 'Not paid, not played' }),
  }),
);

export const payment = clauseKind({
  kind: 'payment',
  title: 'Payment term',
  help: 'Says when an invoice is due: so many days after it, or before something that happens.',
  schema,
  rivalry: () => undefined,
  once: true,
  whole: true,
  sentence: (terms, said) =>
    `Payment${sayConditions(said.for, said.voice)} is due ${sayDue(terms.due, said.voice)}${terms.gate ? '; what is not paid by then is not played' : ''}.`,
  phases: {
    terms: (terms, desk, clause) => {
      if (!fitsEngagement(clause.for, desk.facts)) return;
      desk.payment = { clause: clause.id, due: terms.due, gate: terms.gate };
    },
  },
  examples: [
    {
      case: 'A payment term charges nothing',
      terms: { due: [{ event: 'invoice', days: 30 }] },
      given: { calls: ['rehearsal 60'] },
      owed: '0.00',
    },
  ],
});
