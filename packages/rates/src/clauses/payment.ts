// The payment term: when an invoice is due, in how many parts, and whether playing waits for the money.

import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { sayDue } from '../due.ts';
import { countField, eventDaySchema } from '../fields.ts';
import type { Instalment } from '../findings.ts';
import { fitsEngagement } from '../fit.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';

const schema = perCurrency(() =>
  z.strictObject({
    due: z.array(eventDaySchema).min(1).max(4).readonly().meta({ title: 'Due on the earliest of' }),
    gate: z.boolean().default(false).meta({ title: 'Not paid, not played' }),
    instalments: countField('In so many monthly parts', { least: 2, most: 60 }).optional(),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const payment = clauseKind({
  kind: 'payment',
  title: 'Payment term',
  help: 'Says when an invoice is due: so many days after it, or before something that happens; at once or in monthly parts.',
  schema,
  rivalry: () => undefined,
  once: true,
  whole: true,
  sentence,
  phases: {
    terms: (terms, desk, clause) => {
      if (!fitsEngagement(clause.for, desk.facts)) return;
      const { due, gate } = terms;
      desk.payment = { clause: clause.id, due, gate, instalments: instalmentsOf(terms, desk) };
    },
  },
  examples: [
    {
      case: 'A payment term charges nothing',
      terms: { due: [{ event: 'invoice', days: 30 }] },
      given: { calls: ['rehearsal 60'] },
      owed: '0.00',
    },
    {
      case: 'Nor do instalments',
      terms: { due: [{ event: 'agreement', days: 0, monthEnd: true }], instalments: 9 },
      given: { calls: ['rehearsal 60'] },
      owed: '0.00',
    },
  ],
});

/** Equal parts of what each payer owes, the last one with the rest: 9,200.00 in nine is eight of 1,022.22 and 1,022.24. */
function instalmentsOf({ instalments }: Terms, desk: Desk): Instalment[] {
  if (instalments === undefined) return [];
  return [...desk.owedByPayer()].flatMap(([payer, total]) => {
    const part = total / BigInt(instalments);
    return Array.from({ length: instalments }, (_, month) => ({
      payer,
      month,
      amount: month < instalments - 1 ? part : total - part * BigInt(instalments - 1),
    }));
  });
}

function sentence(terms: Terms, { voice, for: selector }: { voice: Voice; for: ClauseHead['for'] }): string {
  const parts =
    terms.instalments === undefined
      ? ''
      : `, in ${terms.instalments} monthly parts of which the first is due then and the last takes the rest`;
  const gate = terms.gate ? '; what is not paid by then is not played' : '';
  return `Payment${sayConditions(selector, voice)} is due ${sayDue(terms.due, voice)}${parts}${gate}.`;
}
