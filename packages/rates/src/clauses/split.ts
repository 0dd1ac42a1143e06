// Who pays: shares out what some clauses charge among several payers, to the last cent.

import { allocate } from '@colla/money';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { countField, wordsField } from '../fields.ts';
import { clauseKind, perCurrency } from '../kind.ts';
import type { Line } from '../line.ts';
import { fitsEngagement } from '../selector.ts';

const schema = perCurrency(() =>
  z.strictObject({
    of: z
      .array(z.string().min(1))
      .min(1)
      .readonly()
      .optional()
      .meta({ title: 'Of what these clauses charge' }),
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
  sentence: (terms, { voice }) => {
    const parts = terms.among.reduce((sum, { parts }) => sum + parts, 0);
    const shares = terms.among.map((share) => `${share.payer} ${share.parts}/${parts}`);
    const of = terms.of ? `what ${voice.list(terms.of.map((id) => `“${id}”`))} charges` : 'everything';
    return `Of ${of}, ${voice.list(shares)}.`;
  },
  names: (terms) => terms.of ?? [],
  contradictions: ({ among }) => [
    ...(among.some(({ parts }) => parts > 0) ? [] : ['Nobody pays: give at least one payer a part.']),
    ...(new Set(among.map(({ payer }) => payer)).size < among.length
      ? ['One payer is named twice: add their parts together.']
      : []),
  ],
  phases: {
    split: (terms, desk, clause) => {
      if (!fitsEngagement(clause.for, desk.facts)) return;
      desk.lines = desk.lines.flatMap((line) =>
        !terms.of || terms.of.includes(line.clause) ? shared(line, terms, desk) : [line],
      );
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
      owed: '0.00',
    },
  ],
});

/** The line once for each payer with a part; their amounts sum to the line's. */
function shared(line: Line, terms: Terms, desk: Desk): Line[] {
  const parts = terms.among.filter((share) => share.parts > 0);
  const amounts = allocate(
    line.amount,
    parts.map((share) => share.parts),
  );
  const whole = parts.reduce((sum, share) => sum + share.parts, 0);
  return parts.map((share, index) => {
    const amount = amounts[index] ?? 0n;
    return {
      ...line,
      key: `${line.key}/${share.payer}`,
      payer: share.payer,
      quantity: { count: share.parts, of: whole },
      unit: `of ${desk.voice.money(line.amount)}`,
      rate: line.amount,
      amount,
      arithmetic: `${line.arithmetic}; ${share.parts}/${whole} of it = ${desk.voice.money(amount)}`,
    };
  });
}
