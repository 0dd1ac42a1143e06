// Who is paid: what some clauses charge, or a share of it, goes to a third party, such as a festival's fee for arranging
// a pianist, an agency's commission, the fee of a deputy.

import { shareOf } from '@colla/money';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { shareField, wordsField } from '../fields.ts';
import { fitsEngagement } from '../fit.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import type { Line } from '../line.ts';
import { capital, sayCharges, sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';

const schema = perCurrency(() =>
  z.strictObject({
    payee: wordsField('Paid to'),
    of: z
      .array(z.string().min(1))
      .min(1)
      .readonly()
      .optional()
      .meta({ title: 'Only what these clauses charge', unit: 'clause' }),
    share: shareField('Share of it').default(10_000),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const payee = clauseKind({
  kind: 'payee',
  title: 'Who is paid',
  help: 'What some clauses charge is paid to a third party, not to the pianist: it is shown, and never invoiced here.',
  schema,
  rivalry: () => undefined,
  whole: true,
  sentence: ({ payee, of, share }, { voice, for: selector }) => {
    const charges = sayCharges(of, voice);
    const conditions = sayConditions(selector, voice);
    return share === 10_000
      ? `${capital(charges)}${conditions} is paid to ${payee}.`
      : `${capital(payee)} is paid ${voice.share(share)} of ${charges}${conditions}.`;
  },
  names: ({ of }) => of ?? [],
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
    {
      case: 'An agency is paid 15 % of the fee of 300.00 by the payer: 45.00, and 255.00 are left',
      terms: { payee: 'the agency', share: 1500 },
      given: { calls: ['recital 60'] },
      with: [{ id: 'fee', kind: 'fixed', for: {}, terms: { price: '300.00' } }],
      owed: '0.00',
      also: { payers: { payer: '255.00' } },
    },
  ],
});

/** What is handed on sums to its share of all these lines: each line gives what it adds to it. */
function handOn({ payee, of, share }: Terms, desk: Desk, clause: ClauseHead): void {
  if (!fitsEngagement(clause.for, desk.facts)) return;
  let before = 0n;
  desk.replace(desk.portionsOf(clause, of), (line, portion) => {
    const gone = shareOf(before + line.amount, share) - shareOf(before, share);
    before += line.amount;
    const theirs = (line: Line) => ({ ...line, key: `${line.key}/${payee}`, payee });
    if (gone === line.amount) {
      desk.toOthers.push(theirs(line));
      return [];
    }
    const handed = part(line, gone, desk.voice.share(share), desk.voice);
    const left = part(line, line.amount - gone, desk.voice.share(10_000 - share), desk.voice);
    if (gone !== 0n) desk.toOthers.push(theirs(handed));
    desk.lineage.become(left, portion);
    return [left];
  });
}

function part(line: Line, amount: bigint, share: string, voice: Voice): Line {
  return {
    ...line,
    quantity: { count: 1, of: 1 },
    unit: `share of ${share}`,
    rate: amount,
    amount,
    arithmetic: `${line.arithmetic}; ${share} of it = ${voice.money(amount)}`,
  };
}
