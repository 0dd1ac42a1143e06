// Time charged by the hour, the half hour, or a service of so many minutes.

import { chargedMinutes } from '@colla/hours';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { amountField, bandField, minutesField } from '../fields.ts';
import { categoryOf, type Item } from '../item.ts';
import { type ClauseHead, type Counting, clauseKind, perCurrency } from '../kind.ts';
import { capital, sayCalls } from '../phrases.ts';
import { unitOf, type Voice } from '../voice.ts';
import { bandContradiction, sayBand } from './band.ts';
import { graceContradiction } from './grace.ts';

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
  sentence,
  contradictions: (terms) => [...bandContradiction(terms.price, terms.band), ...graceContradiction(terms)],
  counts: ({ time }) => COUNTINGS[time],
  phases: {
    rates: (terms, desk, clause) => {
      for (const item of desk.toPrice(clause)) price(item, terms, desk, clause);
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
  ],
});

const COUNTINGS: Readonly<Record<Terms['time'], Counting | undefined>> = {
  played: undefined,
  planned: ({ planned }) => planned,
  longer: ({ planned, played }) => Math.max(planned, played),
  'from the agreed start': ({ played, waited }) => played + waited,
};

function price(item: Item, terms: Terms, desk: Desk, clause: ClauseHead): void {
  const { call, counted, covered } = item;
  // The minimum is for the whole call: what is covered of it is made up already.
  const minimum = Math.max(0, terms.minimum - covered);
  const charged = chargedMinutes(Math.max(0, counted - covered), { ...terms, minimum });
  item.settled = true;
  if (charged === 0) return;
  desk.charge(clause, {
    category: categoryOf(call),
    what: capital(call.label ?? call.kind),
    calls: [call.id],
    about: call.id,
    facts: [
      { name: call.standing.is === 'played' ? 'played' : 'planned', value: desk.voice.minutes(counted) },
      ...(covered > 0 ? [{ name: 'covered', value: desk.voice.minutes(covered) }] : []),
      { name: 'charged', value: desk.voice.minutes(charged) },
    ],
    quantity: { count: charged, of: terms.per },
    unit: unitOf(terms.per),
    rate: terms.price,
  });
}

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const how = { up: '', nearest: ', to the nearest', down: ', full ones only' }[terms.round];
  const parts = [
    `${capital(sayCalls(said.for, voice))} are ${voice.rate(terms.price, terms.per)}`,
    `charged ${voice.steps(terms.increment)}${how}`,
    terms.minimum > 0 ? `${voice.length(terms.minimum)} at least` : undefined,
    terms.grace > 0 ? `${terms.grace} minutes over are forgiven` : undefined,
    {
      played: undefined,
      planned: 'as planned',
      longer: 'as planned or as played, whichever is longer',
      'from the agreed start': 'from the agreed start, whoever comes late',
    }[terms.time],
  ];
  return `${parts.filter((part) => part !== undefined).join(', ')}.${sayBand(terms.band, voice)}`;
}
