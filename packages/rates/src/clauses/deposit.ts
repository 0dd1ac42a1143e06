// A deposit: money asked for before the work and held until it is earned.

import { divideRounded, shareOf } from '@colla/money';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { sayDue } from '../due.ts';
import { amountField, eventDaySchema, shareField } from '../fields.ts';
import { fitsEngagement } from '../fit.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { sayCharges, sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';

const schema = perCurrency((currency) =>
  z.strictObject({
    of: z
      .discriminatedUnion('as', [
        z.strictObject({ as: z.literal('amount'), amount: amountField(currency, 'Amount') }),
        z.strictObject({
          as: z.literal('share'),
          share: shareField('Share of the fee'),
          on: z
            .array(z.string().min(1))
            .min(1)
            .readonly()
            .optional()
            .meta({ title: 'Only of what these clauses charge', unit: 'clause' }),
          least: amountField(currency, 'At least').optional(),
          most: amountField(currency, 'At most').optional(),
        }),
        z.strictObject({ as: z.literal('first call') }),
      ])
      .meta({ title: 'Deposit' }),
    due: z.array(eventDaySchema).min(1).max(4).readonly().meta({ title: 'Due on the earliest of' }),
    refundable: z
      .array(eventDaySchema)
      .min(1)
      .max(4)
      .readonly()
      .optional()
      .meta({ title: 'Given back on request until the earliest of' }),
    counts: z
      .enum(['the final invoice', 'the next invoice', 'nothing'])
      .default('the final invoice')
      .meta({ title: 'Counts towards' }),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const deposit = clauseKind({
  kind: 'deposit',
  title: 'Deposit',
  help: 'Asks for money before the work; it is held until earned, and counts towards the final invoice.',
  schema,
  rivalry: () => undefined,
  once: true,
  whole: true,
  sentence: (terms, said) => {
    const { voice } = said;
    const of =
      terms.of.as === 'amount'
        ? voice.money(terms.of.amount)
        : terms.of.as === 'share'
          ? sayShare(terms.of, voice)
          : 'the fee of the first call';
    const back = terms.refundable
      ? ` and is given back on request until ${sayDue(terms.refundable, voice)}`
      : '';
    return `A deposit of ${of}${sayConditions(said.for, voice)} is due ${sayDue(terms.due, voice)}; it counts towards ${terms.counts}${back}.`;
  },
  names: ({ of }) => (of.as === 'share' && of.on) || [],
  contradictions: ({ of }) =>
    of.as === 'share' && of.least !== undefined && of.most !== undefined && of.least > of.most
      ? ['The least deposit is more than the most: exchange the two amounts.']
      : [],
  phases: {
    deposit: (terms, desk, clause) => {
      if (!fitsEngagement(clause.for, desk.facts)) return;
      const { amount, arithmetic } = worth(terms, desk, clause);
      const { due, counts, refundable } = terms;
      desk.deposit = {
        clause: clause.id,
        amount,
        due,
        counts,
        arithmetic,
        ...(refundable ? { refundable } : {}),
      };
    },
  },
  examples: [
    {
      case: 'A deposit is asked for, not charged: it adds nothing to the statement',
      terms: { of: { as: 'share', share: 2500 }, due: [{ event: 'agreement', days: 3 }] },
      given: { calls: ['recital 60'] },
      with: [{ id: 'fee', kind: 'fixed', for: {}, terms: { price: '200.00' } }],
      owed: '0.00',
      also: { deposit: '50.00' },
    },
    {
      case: 'A quarter of the fee of 120.00, and 40.00 at least',
      terms: {
        of: { as: 'share', share: 2500, on: ['fee'], least: '40.00' },
        due: [{ event: 'agreement', days: 3 }],
      },
      given: { calls: ['recital 60'], costs: ['Score 80.00'] },
      with: [
        { id: 'fee', kind: 'fixed', for: {}, terms: { price: '120.00' } },
        { id: 'costs', kind: 'cost', for: {}, terms: {} },
      ],
      owed: '0.00',
      also: { deposit: '40.00' },
    },
  ],
});

/** The deposit, in minor units. It is reckoned on the fee as agreed, before anything falls. */
function worth({ of }: Terms, desk: Desk, clause: ClauseHead): { amount: bigint; arithmetic: string } {
  const { money, share } = desk.voice;
  if (of.as === 'amount') return { amount: of.amount, arithmetic: money(of.amount) };
  const charged =
    of.as === 'share'
      ? desk.portionsOf(clause, of.on).reduce((sum, { amount }) => sum + amount, 0n)
      : feeOfFirst(desk);
  const fee = charged < 0n ? 0n : charged;
  const part = of.as === 'share' ? of.share : 10_000;
  const amount = shareOf(fee, part);
  const arithmetic = `${share(part)} × ${money(fee)} = ${money(amount)}`;
  if (of.as !== 'share') return { amount, arithmetic };
  if (of.least !== undefined && amount < of.least)
    return { amount: of.least, arithmetic: `${arithmetic}, at least ${money(of.least)}` };
  if (of.most !== undefined && amount > of.most)
    return { amount: of.most, arithmetic: `${arithmetic}, at most ${money(of.most)}` };
  return { amount, arithmetic };
}

function sayShare({ share, on, least, most }: Extract<Terms['of'], { as: 'share' }>, voice: Voice): string {
  const of = on ? sayCharges(on, voice) : 'the fee';
  const bounds = [
    ...(least === undefined ? [] : [`, at least ${voice.money(least)}`]),
    ...(most === undefined ? [] : [`, at most ${voice.money(most)}`]),
  ];
  return `${voice.share(share)} of ${of}${bounds.join('')}${bounds.length > 0 ? ',' : ''}`;
}

/** What the first call costs, with its part, one of as many as there are calls, of what is charged or taken off for several. */
function feeOfFirst(desk: Desk): bigint {
  const first = desk.items[0]?.call.id;
  if (first === undefined) return 0n;
  return desk.lines
    .filter(({ calls }) => calls.includes(first))
    .reduce((sum, { amount, calls }) => sum + divideRounded(amount, BigInt(calls.length)), 0n);
}
