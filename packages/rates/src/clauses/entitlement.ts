// An entitlement: hours that somebody covers, drawn down call by call; what lies beyond goes to the other clauses.

import type { CallKind } from '@colla/hours';
import { z } from 'zod';
import type { Desk, Item } from '../desk.ts';
import { amountField, minutesField } from '../fields.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { EACH, occasions } from '../occasion.ts';
import { plural, sayCalls, selectorSchema } from '../selector.ts';
import type { Voice } from '../voice.ts';

const schema = perCurrency((currency) =>
  z.strictObject({
    minutes: minutesField('Covered (minutes)', { least: 1 }),
    each: z.enum(EACH).default('engagement').meta({ title: 'Granted anew for each' }),
    first: selectorSchema.shape.calls.meta({ title: 'Drawn first by' }),
    price: amountField(currency, 'Price of a covered hour').prefault('0'),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const entitlement = clauseKind({
  kind: 'entitlement',
  title: 'Hours covered',
  help: 'Hours that a department or presenter covers; they are drawn down call by call and what lies beyond is priced by the other clauses.',
  schema,
  rivalry: () => undefined,
  sentence,
  phases: { coverage: draw },
  examples: [
    {
      case: 'Two hours are covered; the exam of 20 minutes draws first, and 50 minutes of rehearsal lie beyond',
      for: { calls: ['rehearsal', 'exam'] },
      terms: { minutes: 120, first: ['exam'] },
      given: { calls: ['rehearsal 150', 'exam 20'] },
      owed: '0.00',
    },
    {
      case: 'The department pays 35.00 for each of the six hours it covers',
      terms: { minutes: 360, price: '35.00' },
      given: { calls: ['rehearsal 120', 'rehearsal 300'] },
      owed: '210.00',
    },
    {
      case: 'An hour is covered each week at 30.00; what one week leaves does not serve the next',
      terms: { minutes: 60, each: 'week', price: '30.00' },
      given: { calls: ['lesson 30 on 2026-03-04', 'lesson 90 on 2026-03-11'] },
      owed: '45.00',
    },
  ],
});

/** Draws in the order calls happen, those of the first kinds before all others. */
function draw(terms: Terms, desk: Desk, clause: ClauseHead): void {
  const grants = occasions(desk.open(clause), terms.each, ({ call }) => call, desk.facts);
  const draws = grants.flatMap(({ of }) => drawOne(of, terms));
  const granted = terms.minutes * Math.max(1, grants.length);
  const used = draws.reduce((sum, { minutes }) => sum + minutes, 0);
  desk.entitlements.push({ clause: clause.id, granted, used, left: granted - used, draws });
  if (used > 0) chargeCovered(terms, desk, clause, { granted, used, draws });
}

function drawOne(items: readonly Item[], terms: Terms): Draw[] {
  const draws: Draw[] = [];
  let left = terms.minutes;
  for (const item of firstOf(items, terms.first)) {
    const open = item.played - item.covered;
    const minutes = Math.min(open, left);
    if (minutes === 0) continue;
    item.covered += minutes;
    item.settled = minutes === open;
    left -= minutes;
    draws.push({ call: item.call.id, minutes });
  }
  return draws;
}

interface Draw {
  readonly call: string;
  readonly minutes: number;
}

function chargeCovered(
  terms: Terms,
  desk: Desk,
  clause: ClauseHead,
  drawn: { granted: number; used: number; draws: readonly Draw[] },
): void {
  desk.charge(clause, {
    category: 'entitlement',
    what: 'Hours covered',
    calls: drawn.draws.map(({ call }) => call),
    facts: [
      { name: 'granted', value: desk.voice.minutes(drawn.granted) },
      { name: 'used', value: desk.voice.minutes(drawn.used) },
      { name: 'left', value: desk.voice.minutes(drawn.granted - drawn.used) },
    ],
    quantity: { count: drawn.used, of: 60 },
    unit: 'hour',
    rate: terms.price,
    said: desk.voice.minutes(drawn.used),
  });
}

function firstOf(items: readonly Item[], first: readonly CallKind[] | undefined): Item[] {
  const leads = (item: Item) => first?.includes(item.call.kind) ?? false;
  return [...items.filter(leads), ...items.filter((item) => !leads(item))];
}

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for']; payer: string }): string {
  const { voice } = said;
  const length = voice.length(terms.minutes);
  const calls = sayCalls(said.for, voice, 'calls');
  const each = terms.each === 'engagement' ? 'in all' : `each ${terms.each}`;
  const covered =
    terms.each === 'call' ? `up to ${length} each of ${calls}` : `${length} of ${calls} ${each}`;
  const price = terms.price > 0n ? ` at ${voice.rate(terms.price, 60)}` : '';
  const first = terms.first ? `, ${voice.list(terms.first.map(plural))} first` : '';
  return `The ${said.payer} covers ${covered}${price}${first}; what lies beyond is charged by the other clauses.`;
}
