// An entitlement: hours that somebody covers, drawn down call by call; what lies beyond goes to the other clauses.

import { type CallKind, playedMinutes } from '@colla/hours';
import { z } from 'zod';
import type { Desk, Item } from '../desk.ts';
import { amountField, minutesField } from '../fields.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { plural, sayCalls, selectorSchema } from '../selector.ts';
import type { Voice } from '../voice.ts';

const schema = perCurrency((currency) =>
  z.strictObject({
    minutes: minutesField('Covered (minutes)', { least: 1 }),
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
  ],
});

/** Draws in the order calls happen, those of the first kinds before all others. */
function draw(terms: Terms, desk: Desk, clause: ClauseHead): void {
  let left = terms.minutes;
  const draws: { call: string; minutes: number }[] = [];
  for (const item of firstOf(desk.open(clause), terms.first)) {
    if (left === 0) break;
    const open = playedMinutes(item.call) - item.covered;
    const given = Math.min(open, left);
    item.covered += given;
    item.settled = given === open;
    left -= given;
    draws.push({ call: item.call.id, minutes: given });
  }
  const used = terms.minutes - left;
  desk.entitlements.push({ clause: clause.id, granted: terms.minutes, used, left, draws });
  if (used > 0) chargeCovered(terms, desk, clause, { used, draws });
}

function chargeCovered(
  terms: Terms,
  desk: Desk,
  clause: ClauseHead,
  drawn: { used: number; draws: { call: string; minutes: number }[] },
): void {
  desk.charge(clause, {
    category: 'entitlement',
    what: 'Hours covered',
    calls: drawn.draws.map(({ call }) => call),
    facts: [
      { name: 'granted', value: desk.voice.minutes(terms.minutes) },
      { name: 'used', value: desk.voice.minutes(drawn.used) },
      { name: 'left', value: desk.voice.minutes(terms.minutes - drawn.used) },
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
  const first = terms.first ? `, ${voice.list(terms.first.map(plural))} first` : '';
  const price = terms.price > 0n ? ` at ${voice.money(terms.price)} an hour` : '';
  return `${sayCalls(said.for, voice)} are covered by the ${said.payer} for ${voice.duration(terms.minutes)} together${price}${first}; what lies beyond is charged by the other clauses.`;
}
