// A fixed fee: for each call, day, week, month or term, for the whole engagement, or for each work, page or minute
// of music; with time included and a rate beyond.

import { z } from 'zod';
import { amountField, bandField, minutesField, shareField, wordsField } from '../fields.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { EACH, liesIn, sayEach } from '../occasion.ts';
import { capital, ordinal, sayCalls, sayCharges, sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';
import { bandContradiction, sayBand } from './band.ts';
import { COUNTED, isCounted, sayWorks, worksSchema } from './counted.ts';
import { priceCalls, priceCounted, priceOccasions } from './fee.ts';
import { furtherContradiction, furtherField } from './further.ts';
import { graceContradiction, sayGrace } from './grace.ts';

const schema = perCurrency((currency) =>
  z.strictObject({
    price: amountField(currency, 'Price'),
    each: z
      .enum([...EACH, ...COUNTED])
      .default('call')
      .meta({ title: 'For each' }),
    and: z
      .strictObject({
        share: shareField('Share', { most: 100_000 }),
        of: z
          .array(z.string().min(1))
          .min(1)
          .max(20)
          .readonly()
          .meta({ title: 'Of what these clauses charge', unit: 'clause' }),
      })
      .optional()
      .meta({ title: 'And a share of another price' }),
    what: wordsField('Called').optional(),
    includes: minutesField('Includes (minutes)', { least: 1 }).optional(),
    beyond: z
      .strictObject({
        price: amountField(currency, 'Price beyond'),
        per: minutesField('For each (minutes)', { least: 1 }).default(60),
        increment: minutesField('Charged in steps of (minutes)', { least: 1 }).default(15),
        grace: minutesField('Minutes forgiven before a new step').default(0),
      })
      .optional()
      .meta({ title: 'Time beyond what is included' }),
    further: furtherField(currency, 'count'),
    within: z
      .enum(['day', 'week', 'month', 'term', 'engagement'])
      .default('engagement')
      .meta({ title: 'Counted anew for each' }),
    through: z
      .boolean()
      .default(false)
      .meta({ title: 'Also where there is none, from the first to the last' }),
    works: worksSchema.optional().meta({ title: 'Only these works' }),
    named: z
      .array(z.string().trim().min(1).max(120))
      .min(1)
      .max(40)
      .readonly()
      .optional()
      .meta({ title: 'Only costs named' }),
    band: bandField(currency),
  }),
);
export type FixedTerms = z.output<ReturnType<typeof schema>>;
type Terms = FixedTerms;

export const fixed = clauseKind({
  kind: 'fixed',
  title: 'Fixed fee',
  help: 'Charges one price for each call, week, work or engagement; time beyond what it includes may be charged by the step.',
  schema,
  rivalry: ({ each }) => (isCounted(each) ? undefined : 'price'),
  choice: 'price',
  each: ({ each }) => (isCounted(each) ? 'engagement' : each),
  names: ({ and }) => and?.of ?? [],
  sentence,
  contradictions: (terms) => [
    ...bandContradiction(terms.price, terms.band),
    ...(terms.beyond ? graceContradiction(terms.beyond) : []),
    ...(terms.beyond && terms.includes === undefined
      ? ['A price beyond needs the time that is included: say how many minutes the fee includes.']
      : []),
    ...(terms.beyond && terms.each !== 'call'
      ? ['Only a fee for each call can include time: charge it for each call.']
      : []),
    ...(terms.and && isCounted(terms.each)
      ? [
          `A share of another price goes with calls, days or the engagement: leave it out for each ${terms.each}.`,
        ]
      : []),
    ...furtherContradiction(terms.further),
    ...countingContradictions(terms),
  ],
  phases: {
    rates: (terms, desk, clause) => {
      if (isCounted(terms.each)) priceCounted(terms, terms.each, desk, clause);
      else if (terms.each === 'call') priceCalls(terms, desk, clause);
      else priceOccasions(terms, terms.each, desk, clause);
    },
  },
  examples: [
    {
      case: 'A jury is 50.00, however long it lasts',
      for: { calls: ['jury'] },
      terms: { price: '50.00' },
      given: { calls: ['jury 12', 'jury 25'] },
      owed: '100.00',
    },
    {
      case: 'A recital of 400.00 includes two hours; it runs 80 minutes over and each hour begun is 100.00',
      terms: { price: '400.00', includes: 120, beyond: { price: '100.00', increment: 60 } },
      given: { calls: ['recital 200'] },
      owed: '600.00',
    },
    {
      case: 'Five rehearsals in two weeks are two weeks',
      terms: { price: '650.00', each: 'week' },
      given: {
        calls: ['3 × rehearsal 240', 'rehearsal 240 on 2026-03-09', 'rehearsal 240 on 2026-03-15'],
      },
      owed: '1300.00',
    },
    {
      case: 'A stipend of 4600.00 a term, for two terms and no calls',
      terms: { price: '4600.00', each: 'term', what: 'Stipend' },
      given: { terms: ['fall 2026-08-24 to 2026-12-11', 'spring 2027-01-11 to 2027-05-07'] },
      owed: '9200.00',
    },
    {
      case: 'A recording at 12.00 for each minute of music: 9 and 4 minutes',
      terms: { price: '12.00', each: 'minute of music', what: 'Recording' },
      given: { works: ['Sonata, 9 min', 'Song, 4 min'] },
      owed: '156.00',
    },
    {
      case: 'Preparation at 3.50 a page of the part',
      terms: { price: '3.50', each: 'page', what: 'Preparation' },
      given: { works: ['Concerto, 22 pages', 'Encore, 2 pages'] },
      owed: '84.00',
    },
    {
      case: 'Two of three works were asked for, at 30.00 each',
      terms: { price: '30.00', each: 'requested work', what: 'Preparation' },
      given: { works: ['Song', 'Aria, requested', 'Hymn, requested'] },
      owed: '60.00',
    },
    {
      case: 'The first service of a day is 150.00, each further one that day 100.00',
      terms: { price: '150.00', further: [{ after: 1, price: '100.00' }], within: 'day' },
      given: { calls: ['service 60 at 09:00', 'service 60 on 2026-03-02 at 11:00', 'service 60'] },
      owed: '400.00',
    },
    {
      case: 'Ten candidates at 20.00, those beyond at 15.00: thirteen are 245.00',
      terms: { price: '20.00', each: 'soloist', further: [{ after: 10, price: '15.00' }] },
      given: { calls: ['exam 180'], sharers: 13 },
      owed: '245.00',
    },
    {
      case: 'A retainer of 80.00 a month from the first to the last: March, April without a call, and May',
      terms: { price: '80.00', each: 'month', through: true, what: 'Retainer' },
      given: { calls: ['lesson 60 on 2026-03-10', 'lesson 60 on 2026-05-12'] },
      owed: '240.00',
    },
    {
      case: 'Two nights away, with 24.00 for meals each, whatever the nights themselves cost',
      terms: { price: '24.00', each: 'cost', named: ['Night'], what: 'Meals' },
      given: { costs: ['Night 95.00', 'Night 80.00', 'Score 12.00'] },
      owed: '48.00',
    },
    {
      case: 'Each rehearsal is a tenth of the recital of 350.00: two are 70.00',
      for: { calls: ['rehearsal'] },
      terms: { price: '0.00', and: { share: 1000, of: ['recital'] } },
      given: { calls: ['2 × rehearsal 60', 'recital 90'] },
      with: [{ id: 'recital', kind: 'fixed', for: { calls: ['recital'] }, terms: { price: '350.00' } }],
      owed: '70.00',
    },
    {
      case: 'Preparation is 25.00 for each hard work longer than ten minutes: one of three is both',
      terms: { price: '25.00', each: 'work', works: { minutes: { from: 11 }, difficulties: ['hard'] } },
      given: { works: ['Sonata, 22 min, difficulty hard', 'Study, 3 min, difficulty hard', 'Suite, 18 min'] },
      owed: '25.00',
    },
  ],
});

/** What is counted, and anew for what, must go together. */
function countingContradictions({ each, within, further, through, works, named }: Terms): string[] {
  const ofWorks = isCounted(each) && each !== 'soloist' && each !== 'hold' && each !== 'cost';
  return [
    ...(further.length > 0 && each === 'engagement'
      ? ['There is one fee for the engagement and none further: charge it for each call, day or work.']
      : []),
    ...(isCounted(each) || liesIn(each, within)
      ? []
      : [`A ${each} is no part of one ${within}: count them anew for a longer time.`]),
    ...(isCounted(each) && within !== 'engagement'
      ? [`What is counted for each ${each} is counted once: leave out for what it is counted anew.`]
      : []),
    ...(through && further.length > 0 && within !== 'engagement'
      ? ['Those without calls belong to no one of what is counted anew: count them for the engagement.']
      : []),
    ...(through && each !== 'day' && each !== 'week' && each !== 'month'
      ? [
          'Only days, weeks and months lie between others: charge it for one of them, or leave out those without calls.',
        ]
      : []),
    ...(named && each !== 'cost'
      ? ['Costs are named, but something else is counted: charge it for each cost.']
      : []),
    ...(works && !ofWorks
      ? ['Works are chosen, but something else is counted: charge it for each work, page or minute of music.']
      : []),
  ];
}

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const { includes, beyond, band } = terms;
  const included = includes === undefined ? '' : `, ${voice.length(includes)} included`;
  const forgiven = sayGrace(beyond?.grace ?? 0);
  const further = beyond
    ? `; time beyond is ${voice.rate(beyond.price, beyond.per)}, charged ${voice.steps(beyond.increment)}${forgiven ? `, ${forgiven}` : ''}`
    : '';
  return `${subject(terms, said)}${included}${further}${sayFurther(terms, voice)}${sayThrough(terms)}.${sayBand(band, voice)}`;
}

function sayFurther({ further, each, within }: Terms, voice: Voice): string {
  if (further.length === 0) return '';
  const one = isCounted(each) || each === 'call' ? 'one' : each;
  const of = within === 'engagement' ? '' : ` of a ${within}`;
  const steps = further.map(({ after, price }, index) => {
    const until = further[index + 1]?.after;
    const which =
      until === undefined
        ? `from the ${ordinal(after + 1)}${of} on`
        : `from the ${ordinal(after + 1)}${of} to the ${ordinal(until)}`;
    return `${which} ${voice.money(price)} for each ${one}`;
  });
  return `; ${voice.list(steps)}`;
}

function sayThrough({ through, each }: Terms): string {
  return through ? `, also for a ${each} without any between the first and the last` : '';
}

function subject(terms: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const { price, each, what, works, named, and } = terms;
  const amount = sayAmount(terms, voice);
  if (each === 'engagement' || isCounted(each)) {
    const unit =
      each === 'engagement'
        ? sayEach(each)
        : `for each ${each}${sayWorks(works, voice)}${sayNamed(named, voice)}`;
    return `${capital(what ?? 'fee')}${sayConditions(said.for, voice)}: ${amount} ${unit}`;
  }
  const calls = sayCalls(said.for, voice);
  const who = what ? `${capital(what)}: ${calls}` : capital(calls);
  return price === 0n && !and ? `${who} cost nothing` : `${who} are ${amount} ${sayEach(each)}`;
}

function sayAmount({ price, and }: Terms, voice: Voice): string {
  if (!and) return voice.money(price);
  const share = `${voice.share(and.share)} of ${sayCharges(and.of, voice)}`;
  return price === 0n ? share : `${voice.money(price)} and ${share}`;
}

function sayNamed(named: readonly string[] | undefined, voice: Voice): string {
  return named ? ` named ${voice.either(named.map((name) => `“${name}”`))}` : '';
}
