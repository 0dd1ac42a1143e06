// A deposit: money asked for before the work and held until it is earned.

import { divideRounded, shareOf } from '@colla/money';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { sayDue } from '../due.ts';
import { amountField, eventDaySchema, shareField } from '../fields.ts';
import { fitsEngagement } from '../fit.ts';
import { clauseKind, perCurrency } from '../kind.ts';
import { sayConditions } from '../phrases.ts';

const schema = perCurrency((currency) =>
  z.strictObject({
    of: z
      .discriminatedUnion('as', [
        z.strictObject({ as: z.literal('amount'), amount: amountField(currency, 'Amount') }),
        z.strictObject({ as: z.literal('share'), share: shareField('Share of the fee') }),
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
          ? `${voice.share(terms.of.share)} of the fee`
          : 'the fee of the first call';
    const back = terms.refundable
      ? ` and is given back on request until ${sayDue(terms.refundable, voice)}`
      : '';
    return `A deposit of ${of}${sayConditions(said.for, voice)} is due ${sayDue(terms.due, voice)}; it counts towards ${terms.counts}${back}.`;
  },
  phases: {
    deposit: (terms, desk, clause) => {
      if (!fitsEngagement(clause.for, desk.facts)) return;
      const { amount, arithmetic } = worth(terms, desk);
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
  ],
});

/** The deposit, in minor units. It is reckoned on the fee as agreed, before anything falls. */
function worth(terms: Terms, desk: Desk): { amount: bigint; arithmetic: string } {
  const { voice } = desk;
  if (terms.of.as === 'amount') return { amount: terms.of.amount, arithmetic: voice.money(terms.of.amount) };
  const due =
    terms.of.as === 'share' ? desk.lines.reduce((sum, line) => sum + line.amount, 0n) : feeOfFirst(desk);
  const fee = due < 0n ? 0n : due;
  const share = terms.of.as === 'share' ? terms.of.share : 10_000;
  const amount = shareOf(fee, share);
  return { amount, arithmetic: `${voice.share(share)} × ${voice.money(fee)} = ${voice.money(amount)}` };
}

/** What the first call costs, with its part, one of as many as there are calls, of what is charged or taken off for several. */
function feeOfFirst(desk: Desk): bigint {
  const first = desk.items[0]?.call.id;
  if (first === undefined) return 0n;
  return desk.lines
    .filter(({ calls }) => calls.includes(first))
    .reduce((sum, { amount, calls }) => sum + divideRounded(amount, BigInt(calls.length)), 0n);
}
