// Who pays: shares out what some clauses charge among several payers, to the last cent.

import { allocate } from '@colla/money';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { countField, wordsField } from '../fields.ts';
import { fitsEngagement } from '../fit.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import type { Line } from '../line.ts';
import { capital, sayCharges, sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';

const schema = perCurrency(() =>
  z.strictObject({
    of: z
      .array(z.string().min(1))
      .min(1)
      .readonly()
      .optional()
      .meta({ title: 'Of what these clauses charge', unit: 'clause' }),
    among: z
      .array(z.strictObject({ payer: wordsField('Payer'), parts: countField('Parts', { least: 0 }) }))
      .min(1)
      .max(12)
      .readonly()
      .meta({ title: 'Among' }),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const split = clauseKind({
  kind: 'split',
  title: 'Who pays',
  help: 'Shares out what some clauses charge among several payers, to the last cent.',
  schema,
  rivalry: () => undefined,
  whole: true,
  sentence,
  names: (terms) => terms.of ?? [],
  contradictions: ({ among }) => [
    ...(among.some(({ parts }) => parts > 0) ? [] : ['Nobody pays: give at least one payer a part.']),
    ...(new Set(among.map(({ payer }) => payer)).size < among.length
      ? ['One payer is named twice: add their parts together.']
      : []),
  ],
  phases: {
    split: (terms, desk, clause) => {
      if (fitsEngagement(clause.for, desk.facts)) shareOut(terms, desk, clause);
    },
  },
  examples: [
    {
      case: 'A split charges nothing of its own',
      terms: {
        among: [
          { payer: 'school', parts: 1 },
          { payer: 'family', parts: 1 },
        ],
      },
      given: { calls: ['rehearsal 60'] },
      with: [{ id: 'fee', kind: 'fixed', for: {}, terms: { price: '45.01' } }],
      owed: '0.00',
      also: { payers: { school: '22.51', family: '22.50' } },
    },
  ],
});

/** With what a cancellation or a limit made of these charges, and what is taken off them. */
function shareOut(terms: Terms, desk: Desk, clause: ClauseHead): void {
  let before = 0n;
  desk.replace(desk.portionsOf(clause, terms.of), (line, portion) => {
    const shares = shared(line, before, terms, desk);
    for (const share of shares) desk.lineage.become(share, portion);
    before += line.amount;
    return shares;
  });
}

/**
 * The line once for each payer with a part. Their amounts sum to the line's; and since what is divided is the sum
 * so far (`before` and this line), no payer's total is a whole cent off its fraction. A single share can be: each
 * is charged as it stands, not as the fraction.
 */
function shared(line: Line, before: bigint, terms: Terms, desk: Desk): Line[] {
  const parts = terms.among.filter((share) => share.parts > 0);
  const weights = parts.map((share) => share.parts);
  const until = allocate(before, weights);
  const amounts = allocate(before + line.amount, weights).map((sum, index) => sum - (until[index] ?? 0n));
  const whole = weights.reduce((sum, weight) => sum + weight, 0);
  return parts.map((share, index) => {
    const amount = amounts[index] ?? 0n;
    return {
      ...line,
      key: `${line.key}/${share.payer}`,
      payer: share.payer,
      facts: [...line.facts, { name: 'shared', value: desk.voice.money(line.amount) }],
      quantity: { count: 1, of: 1 },
      unit: `share of ${share.parts}/${whole}`,
      rate: amount,
      amount,
      arithmetic: `${line.arithmetic}; ${share.parts}/${whole} of it = ${desk.voice.money(amount)}`,
    };
  });
}

function sentence({ of, among }: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const what = sayCharges(of, voice) + sayConditions(said.for, voice);
  const payers = among.filter(({ parts }) => parts > 0);
  if (payers.length === 1) return `${capital(payers[0]?.payer ?? '')} pays ${what}.`;
  const whole = payers.reduce((sum, { parts }) => sum + parts, 0);
  if (payers.every(({ parts }) => parts === payers[0]?.parts))
    return `${capital(voice.list(payers.map(({ payer }) => payer)))} share ${what} equally.`;
  return `${capital(voice.list(payers.map(({ payer, parts }) => `${payer} pays ${parts}/${whole}`)))} of ${what}.`;
}
