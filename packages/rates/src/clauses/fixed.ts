// A fixed fee: for each call, day, week, month or term, for the whole engagement, or for each work, page or minute
// of music; with time included and a rate beyond.

import { chargedMinutes, principalCall } from '@colla/hours';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import type { Facts, WorkFacts } from '../facts.ts';
import { amountField, bandField, minutesField, wordsField } from '../fields.ts';
import { fitsEngagement } from '../fit.ts';
import { categoryOf, type Item } from '../item.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { EACH, type Occasion, occasions, sayEach } from '../occasion.ts';
import { capital, plural, sayCalls, sayConditions } from '../phrases.ts';
import { minutesOfMusic } from '../selector.ts';
import { unitOf, type Voice } from '../voice.ts';
import { bandContradiction, sayBand } from './band.ts';
import { graceContradiction } from './grace.ts';

/** What is counted over the programme and its soloists, and not over calls. */
const COUNTED = ['work', 'requested work', 'minute of music', 'page', 'soloist'] as const;
type Counted = (typeof COUNTED)[number];

const schema = perCurrency((currency) =>
  z.strictObject({
    price: amountField(currency, 'Price'),
    each: z
      .enum([...EACH, ...COUNTED])
      .default('call')
      .meta({ title: 'For each' }),
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
    band: bandField(currency),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const fixed = clauseKind({
  kind: 'fixed',
  title: 'Fixed fee',
  help: 'Charges one price for each call, week, work or engagement; time beyond what it includes may be charged by the step.',
  schema,
  rivalry: ({ each }) => (isCounted(each) ? undefined : 'price'),
  choice: 'price',
  each: ({ each }) => (isCounted(each) ? 'engagement' : each),
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
  ],
  phases: {
    rates: (terms, desk, clause) => {
      if (isCounted(terms.each)) priceCounted(terms, terms.each, desk, clause);
      else if (terms.each === 'call')
        for (const item of desk.toPrice(clause)) priceCall(item, terms, desk, clause);
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
  ],
});

function isCounted(each: Terms['each']): each is Counted {
  return COUNTED.some((counted) => counted === each);
}

function priceCall(item: Item, terms: Terms, desk: Desk, clause: ClauseHead): void {
  const { call } = item;
  item.settled = true;
  desk.charge(clause, {
    category: categoryOf(call),
    what: terms.what ?? capital(call.label ?? call.kind),
    calls: [call.id],
    about: call.id,
    quantity: { count: 1, of: 1 },
    unit: call.kind,
    rate: terms.price,
  });
  if (terms.beyond && terms.includes !== undefined)
    chargeBeyond(item, { ...terms.beyond, includes: terms.includes }, desk, clause);
}

function chargeBeyond(
  item: Item,
  terms: NonNullable<Terms['beyond']> & { includes: number },
  desk: Desk,
  clause: ClauseHead,
): void {
  const { call, covered, played } = item;
  const beyond = Math.max(0, played - covered - terms.includes);
  const charged = chargedMinutes(beyond, { ...terms, minimum: 0, round: 'up' });
  if (charged === 0) return;
  desk.charge(clause, {
    category: categoryOf(call),
    what: `${capital(call.label ?? call.kind)}, time beyond ${desk.voice.length(terms.includes)}`,
    calls: [call.id],
    about: `${call.id}:beyond`,
    facts: [
      { name: 'played', value: desk.voice.minutes(played) },
      ...(covered > 0 ? [{ name: 'covered', value: desk.voice.minutes(covered) }] : []),
      { name: 'included', value: desk.voice.minutes(terms.includes) },
      { name: 'charged', value: desk.voice.minutes(charged) },
    ],
    quantity: { count: charged, of: terms.per },
    unit: unitOf(terms.per),
    rate: terms.price,
  });
}

/**
 * One fee for all the calls of a day, week, month or term, or of the whole, that no closer clause prices. Without
 * any calls, the whole is owed once, and a term for each the place has told: a stipend.
 */
function priceOccasions(
  terms: Terms,
  each: Exclude<Terms['each'], 'call' | Counted>,
  desk: Desk,
  clause: ClauseHead,
): void {
  const alone = desk.withoutCalls && fitsEngagement(clause.for, desk.facts);
  const due: Occasion<Item>[] = alone
    ? desk.withoutAny(each)
    : occasions(desk.toPrice(clause), each, ({ call }) => call, desk.facts);
  for (const occasion of due) {
    const calls = occasion.of.map(({ call }) => call);
    const principal = principalCall(calls);
    for (const item of occasion.of) item.settled = true;
    desk.charge(clause, {
      category: principal ? categoryOf(principal) : 'performance',
      what: terms.what ?? capital(each),
      calls: calls.map(({ id }) => id),
      ...(occasion.about === undefined ? {} : { about: occasion.about }),
      quantity: { count: 1, of: 1 },
      unit: each,
      rate: terms.price,
    });
  }
}

/** Owed where the engagement leaves anything to pay: for an engagement that fell in time nothing is prepared. */
function priceCounted(terms: Terms, each: Counted, desk: Desk, clause: ClauseHead): void {
  const { count, works } = counted(each, desk.facts);
  if (count === 0 || !desk.stands || !fitsEngagement(clause.for, desk.facts)) return;
  desk.charge(clause, {
    category: 'other',
    what: terms.what ?? capital(each === 'minute of music' ? each : plural(each)),
    facts: works.length > 0 ? [{ name: 'works', value: works.map((work) => work.title).join('; ') }] : [],
    quantity: { count, of: 1 },
    unit: each,
    rate: terms.price,
  });
}

/** How many there are, and the works they were counted over. */
function counted(each: Counted, facts: Facts): { count: number; works: readonly WorkFacts[] } {
  if (each === 'soloist') return { count: facts.sharers, works: [] };
  const works = facts.programme.filter(({ requested }) => each !== 'requested work' || requested);
  if (each === 'minute of music') return { count: minutesOfMusic(facts), works };
  if (each === 'page') return { count: works.reduce((sum, { pages = 0 }) => sum + pages, 0), works };
  return { count: works.length, works };
}

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const { includes, beyond, band } = terms;
  const included = includes === undefined ? '' : `, ${voice.length(includes)} included`;
  const further = beyond
    ? `; time beyond is ${voice.rate(beyond.price, beyond.per)}, charged ${voice.steps(beyond.increment)}${beyond.grace > 0 ? `, ${beyond.grace} minutes over are forgiven` : ''}`
    : '';
  return `${subject(terms, said)}${included}${further}.${sayBand(band, voice)}`;
}

function subject({ price, each, what }: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  if (each === 'engagement' || isCounted(each)) {
    const unit = each === 'engagement' ? sayEach(each) : `for each ${each}`;
    return `${capital(what ?? 'fee')}${sayConditions(said.for, voice)}: ${voice.money(price)} ${unit}`;
  }
  const calls = sayCalls(said.for, voice);
  const who = what ? `${capital(what)}: ${calls}` : capital(calls);
  return price === 0n ? `${who} cost nothing` : `${who} are ${voice.money(price)} ${sayEach(each)}`;
}
