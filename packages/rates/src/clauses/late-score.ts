// A score that comes late: what it costs, whether the pianist may decline, or which hours are lost. The day by which
// it is wanted runs back from the performance or from the first call, and is earlier for works that are hard.

import type { Temporal } from '@colla/calendar';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { dueOn } from '../due.ts';
import type { WorkFacts } from '../facts.ts';
import { amountField, countField, wordsField } from '../fields.ts';
import type { LatePart } from '../findings.ts';
import { fitsEngagement } from '../fit.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';

const daysField = (title: string) => z.int().min(0).max(400).meta({ title, unit: 'days' });

const schema = perCurrency((currency) =>
  z.strictObject({
    before: z
      .enum(['principal call', 'first call'])
      .default('principal call')
      .meta({ title: 'Counted back from' }),
    steps: z
      .array(
        z.strictObject({
          days: daysField('Later than this many days before'),
          means: z
            .discriminatedUnion('as', [
              z.strictObject({ as: z.literal('charge'), amount: amountField(currency, 'Amount') }),
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
type Terms = z.output<ReturnType<typeof schema>>;
type Step = Terms['steps'][number];

export const lateScore = clauseKind({
  kind: 'late-score',
  title: 'Late scores',
  help: 'Says by when the pianist must have the music, and what follows when it comes later: a charge, the right to decline, or hours lost.',
  schema,
  rivalry: () => undefined,
  once: true,
  whole: true,
  sentence,
  mentions: ({ steps }) => steps.flatMap(({ means }) => (means.as === 'hours lost' ? means.of : [])),
  contradictions: ({ steps }) =>
    steps.some(({ days }, index) => index > 0 && days >= (steps[index - 1]?.days ?? 0))
      ? ['The steps must run from the earliest day to the latest: put the greatest number of days first.']
      : [],
  phases: {
    standing: (terms, desk, clause) => {
      for (const { step, part } of lateUnder(terms, desk, clause)) {
        desk.late.push(part);
        if (step.means.as === 'hours lost') for (const id of step.means.of) desk.lost.set(id, why(part));
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

interface Late {
  readonly step: Step;
  readonly part: LatePart;
  readonly work: WorkFacts;
}

/** The works whose part came late, or is still out when the statement is made, each with the step it reached. */
function lateUnder(terms: Terms, desk: Desk, clause: ClauseHead): Late[] {
  if (!fitsEngagement(clause.for, desk.facts)) return [];
  const event = dueOn([{ event: terms.before, days: 0 }], desk.facts);
  if (!event) return [];
  return desk.facts.programme.flatMap((work) => {
    const came = cameOn(work, desk.asOf);
    const earlier = terms.harder.find(({ difficulty }) => difficulty === work.difficulty)?.days ?? 0;
    const limit = (step: Step) => event.subtract({ days: step.days + earlier });
    const step = terms.steps.findLast((step) => came !== undefined && daysAfter(limit(step), came) > 0);
    if (!step || !came) return [];
    const dueOn = limit(step);
    const daysLate = daysAfter(dueOn, came);
    return [
      {
        step,
        work,
        part: { clause: clause.id, work: work.title, dueOn, daysLate, means: MEANS[step.means.as] },
      },
    ];
  });
}

const MEANS = {
  charge: 'a charge',
  'may decline': 'the pianist may decline',
  'hours lost': 'hours are lost',
} as const;

/** The day a part came; the day of the statement for one still wanted; undefined where nobody keeps track. */
function cameOn({ part }: WorkFacts, asOf: Temporal.ZonedDateTime): Temporal.PlainDate | undefined {
  if (part?.receivedOn) return part.receivedOn;
  return part?.state === 'wanted' || part?.state === 'promised' ? asOf.toPlainDate() : undefined;
}

function daysAfter(limit: Temporal.PlainDate, came: Temporal.PlainDate): number {
  return limit.until(came, { largestUnit: 'days' }).days;
}

/** For each work, or once for the one that costs most. */
function chargeLate(terms: Terms, desk: Desk, clause: ClauseHead): void {
  if (!desk.stands) return;
  const charged = lateUnder(terms, desk, clause).flatMap(({ step, ...late }) =>
    step.means.as === 'charge' ? [{ ...late, amount: step.means.amount }] : [],
  );
  const dearest = charged.toSorted((one, other) => Number(other.amount - one.amount));
  for (const { work, part, amount } of dearest.slice(0, terms.each === 'work' ? terms.most : 1)) {
    desk.charge(clause, {
      category: 'supplement',
      what: `Late score, ${work.title}`,
      about: work.id,
      facts: [{ name: 'late', value: why(part) }],
      quantity: { count: 1, of: 1 },
      unit: terms.each,
      rate: amount,
    });
  }
}

function why({ work, dueOn, daysLate }: LatePart): string {
  return `${work}: wanted by ${dueOn}, ${daysLate === 1 ? '1 day' : `${daysLate} days`} late`;
}

function sentence(terms: Terms, { voice, for: selector }: { voice: Voice; for: ClauseHead['for'] }): string {
  const event = terms.before === 'first call' ? 'the first call' : 'the performance';
  const steps = terms.steps.map(
    ({ days, means }) => `later than ${sayDays(days)} before ${event} ${sayMeans(means, terms, voice)}`,
  );
  const harder = terms.harder.map(
    ({ difficulty, days }) => `${difficulty} works are wanted ${sayDays(days)} earlier`,
  );
  return `Music${sayConditions(selector, voice)} that comes ${[voice.list(steps), ...harder].join('; ')}.`;
}

function sayMeans(means: Step['means'], { each }: Terms, voice: Voice): string {
  if (means.as === 'charge')
    return `costs ${voice.money(means.amount)} more${each === 'work' ? ' for each work' : ''}`;
  if (means.as === 'may decline') return 'may be declined by the pianist';
  return `loses the hours of ${voice.list(means.of.map((id) => `“${id}”`))}`;
}

function sayDays(days: number): string {
  if (days > 0 && days % 7 === 0) return days === 7 ? 'one week' : `${days / 7} weeks`;
  return days === 1 ? 'one day' : `${days} days`;
}
