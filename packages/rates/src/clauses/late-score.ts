// A score that comes late: what it costs, whether the pianist may decline, or which hours are lost. The day by which
// it is wanted is counted from the performance or another event, and is earlier for works that are hard.

import { CALL_KINDS } from '@colla/hours';
import { z } from 'zod';
import { sayEvent } from '../due.ts';
import { amountField, countField, shareField, wordsField } from '../fields.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';
import { chargeLate, lateUnder, why } from './late-music.ts';

const daysField = (title: string) => z.int().min(0).max(400).meta({ title, unit: 'days' });

const schema = perCurrency((currency) =>
  z.strictObject({
    before: z
      .enum(['principal call', 'first call', 'agreement', 'start of the term', ...CALL_KINDS])
      .default('principal call')
      .meta({ title: 'Counted from' }),
    side: z.enum(['before', 'after']).default('before').meta({ title: 'Before or after it' }),
    steps: z
      .array(
        z.strictObject({
          days: daysField('Later than this many days'),
          means: z
            .discriminatedUnion('as', [
              z.strictObject({
                as: z.literal('charge'),
                amount: amountField(currency, 'Amount'),
                per: z.enum(['delay', 'day', 'week']).default('delay').meta({ title: 'For each (begun)' }),
              }),
              z.strictObject({ as: z.literal('share'), share: shareField('Share of the fee') }),
              z.strictObject({ as: z.literal('may decline') }),
              z.strictObject({
                as: z.literal('hours lost'),
                of: z
                  .array(z.string().min(1))
                  .min(1)
                  .readonly()
                  .meta({ title: 'Hours covered by these clauses', unit: 'clause' }),
              }),
            ])
            .meta({ title: 'Means' }),
        }),
      )
      .min(1)
      .max(12)
      .readonly()
      .meta({ title: 'Steps, the earliest day first' }),
    harder: z
      .array(
        z.strictObject({
          difficulty: wordsField('Works of the difficulty'),
          days: daysField('Are wanted so many days earlier'),
        }),
      )
      .max(12)
      .readonly()
      .default([])
      .meta({ title: 'Hard works' }),
    each: z.enum(['engagement', 'work']).default('engagement').meta({ title: 'Charged for each' }),
    most: countField('At most so many times', { least: 1 }).optional(),
  }),
);
export type LateTerms = z.output<ReturnType<typeof schema>>;
type Terms = LateTerms;
type Step = Terms['steps'][number];

export const lateScore = clauseKind({
  kind: 'late-score',
  title: 'Late scores',
  help: 'Says by when the pianist must have the music, and what follows when it comes later: a charge, the right to decline, or hours lost.',
  schema,
  rivalry: () => undefined,
  once: true,
  /** Music may be wanted so long before a recital, and otherwise before a jury. */
  beside: (one, other) => one.before !== other.before,
  whole: true,
  sentence,
  mentions: ({ steps }) => steps.flatMap(({ means }) => (means.as === 'hours lost' ? means.of : [])),
  contradictions,
  phases: {
    standing: (terms, desk, clause) => {
      for (const { step, part } of lateUnder(terms, desk, clause)) {
        desk.late.push(part);
        if (step.means.as === 'hours lost')
          for (const id of step.means.of) desk.lost.set(id, why(part, desk.voice));
      }
    },
    supplements: chargeLate,
  },
  examples: [
    {
      case: 'Later than four weeks before costs 25.00, later than two weeks 50.00: three weeks before is 25.00',
      terms: {
        steps: [
          { days: 28, means: { as: 'charge', amount: '25.00' } },
          { days: 14, means: { as: 'charge', amount: '50.00' } },
        ],
      },
      given: { calls: ['recital 60 on 2026-06-20'], works: ['Sonata, came 2026-05-30'] },
      owed: '25.00',
    },
    {
      case: 'Exactly four weeks before is in time, a day later is not; a hard work is wanted a week earlier',
      terms: {
        steps: [{ days: 28, means: { as: 'charge', amount: '25.00' } }],
        harder: [{ difficulty: 'hard', days: 7 }],
        each: 'work',
      },
      given: {
        calls: ['recital 60 on 2026-06-20'],
        works: [
          'Song, came 2026-05-23',
          'Aria, came 2026-05-24',
          'Concerto, difficulty hard, came 2026-05-23',
        ],
      },
      owed: '50.00',
    },
    {
      case: 'Wanted by the tenth day after the start of the term: eight days late are two weeks begun at 15.00',
      terms: {
        before: 'start of the term',
        side: 'after',
        steps: [{ days: 10, means: { as: 'charge', amount: '15.00', per: 'week' } }],
      },
      given: {
        terms: ['autumn 2026-09-01 to 2026-12-18'],
        calls: ['recital 60 on 2026-11-20'],
        works: ['Sonata, came 2026-09-19'],
      },
      owed: '30.00',
    },
    {
      case: 'Later than two weeks before the first rehearsal costs a fifth of the fee of 150.00',
      terms: { before: 'rehearsal', steps: [{ days: 14, means: { as: 'share', share: 2000 } }] },
      given: {
        calls: ['rehearsal 60 on 2026-06-10', 'recital 60 on 2026-06-20'],
        works: ['Song, came 2026-05-28'],
      },
      with: [{ id: 'fee', kind: 'fixed', for: {}, terms: { price: '150.00', each: 'engagement' } }],
      owed: '30.00',
    },
    {
      case: 'Music that comes four days before the first rehearsal loses no money here: the pianist may decline',
      terms: { before: 'first call', steps: [{ days: 7, means: { as: 'may decline' } }] },
      given: {
        calls: ['rehearsal 60 on 2026-06-10', 'recital 60 on 2026-06-20'],
        works: ['Song, came 2026-06-06'],
      },
      owed: '0.00',
    },
  ],
});

function contradictions({ steps, side, each, most }: Terms): string[] {
  const sign = side === 'before' ? -1 : 1;
  const first = side === 'before' ? 'greatest' : 'least';
  const after = steps.slice(1);
  return [
    ...(after.some(({ days }, index) => sign * (days - (steps[index]?.days ?? 0)) <= 0)
      ? [`The steps must run from the earliest day to the latest: put the ${first} number of days first.`]
      : []),
    ...(each === 'engagement' && most !== undefined
      ? [
          'It is charged once for the engagement: charge it for each work, or leave out how many times at most.',
        ]
      : []),
  ];
}

function sentence(terms: Terms, { voice, for: selector }: { voice: Voice; for: ClauseHead['for'] }): string {
  const event = terms.before === 'principal call' ? 'the performance' : sayEvent(terms.before);
  const steps = terms.steps.map(
    ({ days, means }) =>
      `later than ${sayDays(days)} ${terms.side} ${event} ${sayMeans(means, terms, voice)}`,
  );
  const harder = terms.harder.map(
    ({ difficulty, days }) => `${difficulty} works are wanted ${sayDays(days)} earlier`,
  );
  const parts = [voice.list(steps), ...harder, ...sayMost(terms)];
  return `Music${sayConditions(selector, voice)} that comes ${parts.join('; ')}.`;
}

function sayMost({ most }: Terms): string[] {
  if (most === undefined) return [];
  return [`no more than ${most === 1 ? 'once' : `${most} times`}`];
}

function sayMeans(means: Step['means'], { each }: Terms, voice: Voice): string {
  const work = each === 'work' ? ' for each work' : '';
  if (means.as === 'share') return `costs ${voice.share(means.share)} of the fee more${work}`;
  if (means.as === 'charge') {
    const begun = means.per === 'delay' ? '' : ` for each ${means.per} begun`;
    return `costs ${voice.money(means.amount)} more${begun}${work}`;
  }
  if (means.as === 'may decline') return 'may be declined by the pianist';
  return `loses the hours of ${voice.list(means.of.map((id) => `“${id}”`))}`;
}

function sayDays(days: number): string {
  if (days > 0 && days % 7 === 0) return days === 7 ? 'one week' : `${days / 7} weeks`;
  return days === 1 ? 'one day' : `${days} days`;
}
