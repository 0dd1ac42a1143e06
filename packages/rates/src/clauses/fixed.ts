// A fixed fee: for each call, for the whole engagement, or for each work; with time included and a rate beyond.

import { chargedMinutes, countedMinutes } from '@colla/hours';
import { z } from 'zod';
import { categoryOf, type Desk, type Item } from '../desk.ts';
import { amountField, bandField, minutesField, wordsField } from '../fields.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { capital, fitsEngagement, plural, sayCalls, sayConditions } from '../selector.ts';
import type { Voice } from '../voice.ts';
import { bandContradiction, sayBand } from './band.ts';

const schema = perCurrency((currency) =>
  z.strictObject({
    price: amountField(currency, 'Price'),
    each: z
      .enum(['call', 'engagement', 'work', 'requested work'])
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
  help: 'Charges one price for each call, work or engagement; time beyond what it includes may be charged by the step.',
  schema,
  rivalry: (terms) => (terms.each === 'call' || terms.each === 'engagement' ? 'price' : undefined),
  choice: 'price',
  sentence,
  contradictions: (terms) => [
    ...bandContradiction(terms.price, terms.band),
    ...(terms.beyond && terms.includes === undefined
      ? ['A price beyond needs the time that is included: say how many minutes the fee includes.']
      : []),
    ...(terms.beyond && terms.each !== 'call'
      ? ['Only a fee for each call can include time: charge it for each call.']
      : []),
  ],
  phases: {
    rates: (terms, desk, clause) => {
      if (terms.each === 'call')
        for (const item of desk.toPrice(clause)) priceCall(item, terms, desk, clause);
      else if (!fitsEngagement(clause.for, desk.facts)) return;
      else if (terms.each === 'engagement') priceEngagement(terms, desk, clause);
      else priceWorks(terms, desk, clause);
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
      case: 'Two of three works were asked for, at 30.00 each',
      terms: { price: '30.00', each: 'requested work', what: 'Preparation' },
      given: { works: ['Song', 'Aria, requested', 'Hymn, requested'] },
      owed: '60.00',
    },
  ],
});

function priceCall(item: Item, terms: Terms, desk: Desk, clause: ClauseHead): void {
  const { call } = item;
  item.settled = true;
  const head = {
    category: categoryOf(call),
    what: terms.what ?? capital(call.label ?? call.kind),
    calls: [call.id],
  };
  desk.charge(clause, {
    ...head,
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
  const counted = countedMinutes(item.call, 'played');
  const beyond = Math.max(0, counted - terms.includes);
  const charged = chargedMinutes(beyond, {
    minimum: 0,
    increment: terms.increment,
    round: 'up',
    grace: terms.grace,
  });
  if (charged === 0) return;
  desk.charge(clause, {
    category: categoryOf(item.call),
    what: `${capital(item.call.label ?? item.call.kind)}, time beyond ${desk.voice.duration(terms.includes)}`,
    calls: [item.call.id],
    about: `${item.call.id}:beyond`,
    facts: [
      { name: 'played', value: desk.voice.minutes(counted) },
      { name: 'included', value: desk.voice.minutes(terms.includes) },
      { name: 'charged', value: desk.voice.minutes(charged) },
    ],
    quantity: { count: charged, of: terms.per },
    unit: terms.per === 60 ? 'hour' : `${terms.per} minutes`,
    rate: terms.price,
  });
}

/** One fee for everything that no closer clause prices. */
function priceEngagement(terms: Terms, desk: Desk, clause: ClauseHead): void {
  const items = desk.toPrice(clause);
  if (items.length === 0 && desk.items.length > 0) return;
  for (const item of items) item.settled = true;
  desk.charge(clause, {
    category: 'performance',
    what: terms.what ?? 'Engagement',
    calls: items.map((item) => item.call.id),
    quantity: { count: 1, of: 1 },
    unit: 'engagement',
    rate: terms.price,
  });
}

function priceWorks(terms: Terms, desk: Desk, clause: ClauseHead): void {
  const works = desk.facts.programme.filter((work) => terms.each === 'work' || work.requested);
  if (works.length === 0) return;
  desk.charge(clause, {
    category: 'other',
    what: terms.what ?? capital(plural(terms.each)),
    facts: [{ name: 'works', value: works.map((work) => work.title).join('; ') }],
    quantity: { count: works.length, of: 1 },
    unit: terms.each,
    rate: terms.price,
  });
}

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const price = voice.money(terms.price);
  const subject =
    terms.each === 'call'
      ? `${terms.what ? `${capital(terms.what)}: ${sayCalls(said.for, voice).toLowerCase()}` : sayCalls(said.for, voice)} are ${price} each`
      : `${terms.what ?? 'The fee'}${sayConditions(said.for, voice)} is ${price} for each ${terms.each}`;
  const included = terms.includes === undefined ? '' : `, ${voice.duration(terms.includes)} included`;
  const beyond = terms.beyond
    ? `; what lies beyond is ${voice.money(terms.beyond.price)} for each ${voice.duration(terms.beyond.per)}, in steps of ${voice.duration(terms.beyond.increment)}`
    : '';
  return `${subject}${included}${beyond}.${sayBand(terms.band, voice)}`;
}
