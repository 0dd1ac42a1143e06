// Who is paid: what some clauses charge goes to a third party, such as a festival's fee for arranging a pianist.

import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { wordsField } from '../fields.ts';
import { fitsEngagement } from '../fit.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { capital, sayCharges, sayConditions } from '../phrases.ts';

const schema = perCurrency(() =>
  z.strictObject({
    payee: wordsField('Paid to'),
    of: z
      .array(z.string().min(1))
      .min(1)
      .readonly()
      .meta({ title: 'What these clauses charge', unit: 'clause' }),
  }),
);

export const payee = clauseKind({
  kind: 'payee',
  title: 'Who is paid',
  help: 'What some clauses charge is paid to a third party, not to the pianist: it is shown, and never invoiced here.',
  schema,
  rivalry: () => undefined,
  whole: true,
  sentence: ({ payee, of }, { voice, for: selector }) =>
    `${capital(sayCharges(of, voice))}${sayConditions(selector, voice)} is paid to ${payee}.`,
  names: ({ of }) => of,
  /** After who pays is settled. */
  rank: () => 1,
  phases: { split: handOn },
  examples: [
    {
      case: 'The festival’s fee of 15.00 is paid to the festival, and nothing of it is charged here',
      terms: { payee: 'the festival', of: ['arranging'] },
      given: { calls: ['competition round 20'] },
      with: [
        { id: 'round', kind: 'fixed', for: { calls: ['competition round'] }, terms: { price: '60.00' } },
        {
          id: 'arranging',
          kind: 'supplement',
          for: {},
          terms: { what: 'Arranging', by: { as: 'amount', amount: '15.00', each: 'engagement' } },
        },
      ],
      owed: '0.00',
    },
  ],
});

function handOn(
  { payee, of }: { payee: string; of: readonly string[] },
  desk: Desk,
  clause: ClauseHead,
): void {
  if (!fitsEngagement(clause.for, desk.facts)) return;
  desk.replace(desk.portionsOf(clause, of), (line) => {
    desk.toOthers.push({ ...line, payee });
    return [];
  });
}
