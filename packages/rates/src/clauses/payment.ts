// The payment term: when an invoice is due, in how many parts, and whether playing waits for the money.

import { allocate } from '@colla/money';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { sayDue } from '../due.ts';
import { countField, eventDaySchema, shareField } from '../fields.ts';
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
    stages: z
      .array(
        z.strictObject({
          share: shareField('Share'),
          due: z.array(eventDaySchema).min(1).max(4).readonly().meta({ title: 'Due on the earliest of' }),
        }),
      )
      .min(1)
      .max(12)
      .readonly()
      .optional()
      .meta({ title: 'Parts that are due before the rest' }),
    early: z
      .strictObject({
        share: shareField('Share'),
        until: z.array(eventDaySchema).min(1).max(4).readonly().meta({ title: 'If paid by the earliest of' }),
      })
      .optional()
      .meta({ title: 'Taken off for early payment' }),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const payment = clauseKind({
  kind: 'payment',
  title: 'Payment term',
  help: 'Says when an invoice is due: so many days after it, or before something that happens; at once, in monthly parts or in others.',
  schema,
  rivalry: () => undefined,
  once: true,
  whole: true,
  sentence,
  contradictions: ({ instalments, stages = [] }) => {
    if (instalments !== undefined && stages.length > 0)
      return ['It is paid in monthly parts and in others: choose one of them.'];
    return stages.reduce((sum, { share }) => sum + share, 0) >= 10_000
      ? ['The parts that are due before the rest leave no rest: let them be less than the whole.']
      : [];
  },
  phases: {
    terms: (terms, desk, clause) => {
      if (!fitsEngagement(clause.for, desk.facts)) return;
      const { due, gate, early } = terms;
      const instalments = terms.stages ? stagesOf(terms.stages, terms, desk) : instalmentsOf(terms, desk);
      desk.payment = { clause: clause.id, due, gate, instalments, ...(early ? { early } : {}) };
    },
  },
  examples: [
    {
      case: 'A payment term charges nothing: an invoice of 1 April is due on 1 May',
      terms: { due: [{ event: 'invoice', days: 30 }] },
      given: { calls: ['rehearsal 60'] },
      owed: '0.00',
      also: { due: '2026-05-01' },
    },
    {
      case: 'Whichever comes first: a week before the recital of 4 April, and not 14 days after the invoice',
      terms: {
        due: [
          { event: 'invoice', days: 14 },
          { event: 'principal call', days: -7 },
        ],
        gate: true,
      },
      given: { calls: ['rehearsal 60 on 2026-03-02', 'recital 60 on 2026-04-04'] },
      owed: '0.00',
      also: { due: '2026-03-28' },
    },
    {
      case: 'Nor do instalments: 100.00 in three is 33.33 twice and 33.34, from the end of February, when it was agreed',
      terms: { due: [{ event: 'agreement', days: 0, monthEnd: true }], instalments: 3 },
      given: { calls: ['rehearsal 60'], agreedAt: '2026-02-03T09:00' },
      with: [{ id: 'fee', kind: 'fixed', for: {}, terms: { price: '100.00' } }],
      owed: '0.00',
      also: { due: '2026-02-28', parts: ['33.33', '33.33', '33.34'] },
    },
    {
      case: 'Nor do parts on several days, nor what early payment may take off: of 200.00, 60.00 and on the day 140.00',
      terms: {
        due: [{ event: 'principal call', days: 0 }],
        stages: [{ share: 3000, due: [{ event: 'agreement', days: 7 }] }],
        early: { share: 200, until: [{ event: 'invoice', days: 10 }] },
      },
      given: { calls: ['recital 60 on 2026-03-20'], agreedAt: '2026-02-03T09:00' },
      with: [{ id: 'fee', kind: 'fixed', for: {}, terms: { price: '200.00' } }],
      owed: '0.00',
      also: { due: '2026-03-20', parts: ['60.00', '140.00'] },
    },
  ],
});

/** Equal parts of what each payer owes, the last one with the rest: 9,200.00 in nine is eight of 1,022.22 and 1,022.24. */
function instalmentsOf({ instalments }: Terms, desk: Desk): Instalment[] {
  if (instalments === undefined) return [];
  return [...desk.owedByPayer()].flatMap(([payer, total]) => {
    const part = total / BigInt(instalments);
    return Array.from({ length: instalments }, (_, index) => ({
      payer,
      ordinal: index + 1,
      amount: index < instalments - 1 ? part : total - part * BigInt(instalments - 1),
    }));
  });
}

/** What each payer owes at each stage, to the last cent; the rest on the day that payment is due. */
function stagesOf(stages: NonNullable<Terms['stages']>, { due }: Terms, desk: Desk): Instalment[] {
  const rest = 10_000 - stages.reduce((sum, { share }) => sum + share, 0);
  const all = [...stages, { share: rest, due }];
  return [...desk.owedByPayer()].flatMap(([payer, total]) => {
    const amounts = allocate(
      total,
      all.map(({ share }) => share),
    );
    return all.map(({ due }, index) => ({ payer, ordinal: index + 1, due, amount: amounts[index] ?? 0n }));
  });
}

function sentence(terms: Terms, { voice, for: selector }: { voice: Voice; for: ClauseHead['for'] }): string {
  const parts =
    terms.instalments === undefined
      ? ''
      : `, in ${terms.instalments} monthly parts of which the first is due then and the last takes the rest`;
  const gate = terms.gate ? '; what is not paid by then is not played' : '';
  const due = sayDue(terms.due, voice);
  const when = terms.stages ? `: ${sayStages(terms.stages, voice)}, and the rest ${due}` : ` is due ${due}`;
  return `Payment${sayConditions(selector, voice)}${when}${parts}${gate}.${sayEarly(terms, voice)}`;
}

function sayStages(stages: NonNullable<Terms['stages']>, voice: Voice): string {
  return stages.map(({ share, due }) => `${voice.share(share)} is due ${sayDue(due, voice)}`).join(', ');
}

function sayEarly({ early }: Terms, voice: Voice): string {
  return early
    ? ` Paid no later than ${sayDue(early.until, voice)}, it is ${voice.share(early.share)} less.`
    : '';
}
