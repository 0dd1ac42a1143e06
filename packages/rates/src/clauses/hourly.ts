// Time charged by the hour, the half hour, or a service of so many minutes; call by call, or that of a day or a week
// reckoned together.

import { chargedMinutes } from '@colla/hours';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { amountField, bandField, minutesField } from '../fields.ts';
import { categoryOf, type Item, lengthOf } from '../item.ts';
import { type ClauseHead, type Counting, clauseKind, perCurrency } from '../kind.ts';
import { EACH, occasions } from '../occasion.ts';
import { capital, sayCalls } from '../phrases.ts';
import { unitOf, type Voice } from '../voice.ts';
import { bandContradiction, sayBand } from './band.ts';
import { furtherContradiction, furtherField, type Stretch, stretches } from './further.ts';
import { graceContradiction, sayGrace } from './grace.ts';

const schema = perCurrency((currency) =>
  z.strictObject({
    price: amountField(currency, 'Price'),
    per: minutesField('For each (minutes)', { least: 1 }).default(60),
    minimum: minutesField('At least (minutes)').default(0),
    increment: minutesField('Charged in steps of (minutes)', { least: 1 }).default(15),
    round: z.enum(['up', 'nearest', 'down']).default('up').meta({ title: 'A step begun counts' }),
    grace: minutesField('Minutes forgiven before a new step').default(0),
    time: z
      .enum(['played', 'planned', 'longer', 'from the agreed start'])
      .default('played')
      .meta({ title: 'Time that counts' }),
    each: z.enum(EACH).default('call').meta({ title: 'Time reckoned together for each' }),
    further: furtherField(currency, 'minutes'),
    rest: z
      .strictObject({
        minutes: minutesField('Rest (minutes)', { least: 1 }),
        after: minutesField('In calls longer than (minutes)', { least: 1 }),
      })
      .optional()
      .meta({ title: 'A rest that is not charged' }),
    band: bandField(currency),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const hourly = clauseKind({
  kind: 'hourly',
  title: 'Rate for time',
  help: 'Charges the time of each call by the hour, half hour or service, with a minimum and steps.',
  schema,
  rivalry: () => 'price',
  choice: 'price',
  each: ({ each }) => each,
  sentence,
  contradictions: (terms) => [
    ...bandContradiction(terms.price, terms.band),
    ...graceContradiction(terms),
    ...furtherContradiction(terms.further),
  ],
  counts: countingOf,
  phases: {
    rates: (terms, desk, clause) => {
      const items = desk.toPrice(clause);
      if (terms.each === 'call') for (const item of items) priceTogether([item], terms, desk, clause);
      else
        for (const { of } of occasions(items, terms.each, ({ call }) => call, desk.facts))
          priceTogether(of, terms, desk, clause);
    },
  },
  examples: [
    {
      case: 'A rehearsal of 70 minutes at 60.00 an hour in quarter hours is charged as an hour and a quarter',
      terms: { price: '60.00', minimum: 60 },
      given: { calls: ['rehearsal 70'] },
      owed: '75.00',
    },
    {
      case: 'A rehearsal of 25 minutes costs the minimum of an hour',
      terms: { price: '60.00', minimum: 60 },
      given: { calls: ['rehearsal 25'] },
      owed: '60.00',
    },
    {
      case: 'Five minutes over are forgiven, six begin the next quarter hour',
      terms: { price: '40.00', grace: 5 },
      given: { calls: ['rehearsal 65', 'rehearsal 66'] },
      owed: '90.00',
    },
    {
      case: 'Whoever comes 20 minutes late to an hour and stays to its end pays the hour',
      terms: { price: '60.00', time: 'from the agreed start' },
      given: { calls: ['rehearsal 60 late 20'] },
      owed: '60.00',
    },
    {
      case: 'Three services of 30 minutes at 20.00 each, one of them begun only',
      terms: { price: '20.00', per: 30, increment: 30 },
      given: { calls: ['lesson 60', 'rehearsal 10'] },
      owed: '60.00',
    },
    {
      case: 'The first hour of each call at 60.00, what lies beyond at 40.00: an hour and a half is 80.00',
      terms: { price: '60.00', further: [{ after: 60, price: '40.00' }] },
      given: { calls: ['lesson 90'] },
      owed: '80.00',
    },
    {
      case: 'Ten hours a week at 30.00, what lies beyond at 45.00: 11 hours in one week and one in the next are 375.00',
      terms: { price: '30.00', each: 'week', further: [{ after: 600, price: '45.00' }] },
      given: { calls: ['2 × rehearsal 330', 'rehearsal 60 on 2026-03-09'] },
      owed: '375.00',
    },
    {
      case: 'Three short lessons of a day make 70 minutes, charged together as five quarter hours of 40.00',
      terms: { price: '40.00', each: 'day' },
      given: {
        calls: ['lesson 20 at 10:00', 'lesson 20 on 2026-03-02 at 11:00', 'lesson 30 on 2026-03-02 at 12:00'],
      },
      owed: '50.00',
    },
    {
      case: 'Half an hour of rest in a call of six hours is not charged: five and a half at 20.00',
      terms: { price: '20.00', rest: { minutes: 30, after: 300 } },
      given: { calls: ['rehearsal 360'] },
      owed: '110.00',
    },
  ],
});

const COUNTINGS: Readonly<Record<Terms['time'], Counting | undefined>> = {
  played: undefined,
  planned: ({ planned }) => planned,
  longer: ({ planned, played }) => Math.max(planned, played),
  'from the agreed start': ({ played, waited }) => played + waited,
};

/** Minutes that count by what the terms say, without the rest; a call is never shorter for the rest than where it is due. */
function countingOf({ time, rest }: Terms): Counting | undefined {
  const counting = COUNTINGS[time];
  if (!rest) return counting;
  return (times) => {
    const minutes = counting ? counting(times) : times.played;
    return minutes <= rest.after ? minutes : Math.max(rest.after, minutes - rest.minutes);
  };
}

/** Minimum and steps are for all the time of these calls: each call is charged what it adds to those before it. */
function priceTogether(items: readonly Item[], terms: Terms, desk: Desk, clause: ClauseHead): void {
  // The minimum is for all of it: what is covered is made up already.
  const covered = items.reduce((sum, item) => sum + item.covered, 0);
  const minimum = Math.max(0, terms.minimum - covered);
  let time = 0;
  let before = 0;
  for (const item of items) {
    time += Math.max(0, item.counted - item.covered);
    const until = chargedMinutes(time, { ...terms, minimum });
    item.settled = true;
    for (const stretch of stretches(before, until, terms.price, terms.further))
      charge(item, { stretch, before }, terms, desk, clause);
    before = until;
  }
}

function charge(
  item: Item,
  { stretch, before }: { stretch: Stretch; before: number },
  terms: Terms,
  desk: Desk,
  clause: ClauseHead,
): void {
  const { voice } = desk;
  const { call, played, counted, covered } = item;
  const { count, price, after } = stretch;
  const name = capital(call.label ?? call.kind);
  desk.charge(clause, {
    category: categoryOf(call),
    what: after === undefined ? name : `${name}, beyond ${voice.length(after)}`,
    calls: [call.id],
    about: after === undefined ? call.id : `${call.id}:${after}`,
    facts: [
      { name: lengthOf(item), value: voice.minutes(played) },
      ...(counted === played ? [] : [{ name: 'counted', value: voice.minutes(counted) }]),
      ...(covered > 0 ? [{ name: 'covered', value: voice.minutes(covered) }] : []),
      ...(before > 0 ? [{ name: 'before it', value: voice.minutes(before) }] : []),
      { name: 'charged', value: voice.minutes(count) },
    ],
    quantity: { count, of: terms.per },
    unit: unitOf(terms.per),
    rate: price,
  });
}

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const how = { up: '', nearest: ', to the nearest', down: ', full ones only' }[terms.round];
  const parts = [
    `${capital(sayCalls(said.for, voice))} are ${voice.rate(terms.price, terms.per)}`,
    `charged ${voice.steps(terms.increment)}${how}`,
    terms.minimum > 0 ? `${voice.length(terms.minimum)} at least` : undefined,
    sayGrace(terms.grace),
    terms.each === 'call' ? undefined : `the time of ${ofEach(terms.each)} together`,
    ...terms.further.map(
      ({ after, price }) => `beyond ${voice.length(after)} ${voice.rate(price, terms.per)}`,
    ),
    {
      played: undefined,
      planned: 'as planned',
      longer: 'as planned or as played, whichever is longer',
      'from the agreed start': 'from the agreed start, whoever comes late',
    }[terms.time],
    terms.rest &&
      `without a rest of ${voice.length(terms.rest.minutes)} in calls longer than ${voice.length(terms.rest.after)}`,
  ];
  return `${parts.filter((part) => part !== undefined).join(', ')}.${sayBand(terms.band, voice)}`;
}

function ofEach(each: Terms['each']): string {
  return each === 'engagement' ? 'the engagement' : `each ${each}`;
}
