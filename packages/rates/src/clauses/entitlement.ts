// An entitlement: hours that somebody covers, drawn down call by call; what lies beyond goes to the other clauses.

import { whenOf } from '@colla/calendar';
import type { Call, CallKind } from '@colla/hours';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { amountField, countField, minutesField } from '../fields.ts';
import type { Item } from '../item.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { EACH, type Occasion, occasions } from '../occasion.ts';
import { plural, sayCalls } from '../phrases.ts';
import { selectorSchema } from '../selector.ts';
import type { Voice } from '../voice.ts';

const schema = perCurrency((currency) =>
  z.strictObject({
    minutes: minutesField('Covered (minutes)', { least: 1 }).optional(),
    calls: countField('Covered (calls)', { least: 1 }).optional(),
    each: z.enum(EACH).default('engagement').meta({ title: 'Granted anew for each' }),
    first: selectorSchema.shape.calls.meta({ title: 'Drawn first by, in this order' }),
    inARow: countField('At most so many calls without a pause', { least: 1 }).optional(),
    rollsOver: z.boolean().default(false).meta({ title: 'What is left serves the next' }),
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
  each: ({ each }) => each,
  sentence,
  contradictions: ({ minutes, calls, each, rollsOver }) => {
    if (minutes === undefined && calls === undefined)
      return ['It covers nothing: give minutes, a number of calls, or both.'];
    if (rollsOver && minutes === undefined) return ['Only time can roll over: give the minutes it covers.'];
    return rollsOver && each === 'call'
      ? ['What one call leaves belongs to that call: grant it anew for each day, week, month or term.']
      : [];
  },
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
    {
      case: 'An hour a week at 30.00 that rolls over: half an hour is left, and serves the 90 minutes of the next',
      terms: { minutes: 60, each: 'week', price: '30.00', rollsOver: true },
      given: { calls: ['lesson 30 on 2026-03-04', 'lesson 90 on 2026-03-11'] },
      owed: '60.00',
    },
    {
      case: 'One master class is covered, the second is not, however short they are',
      for: { calls: ['class'] },
      terms: { calls: 1, price: '30.00' },
      given: { calls: ['class 40', 'class 20'] },
      owed: '20.00',
    },
    {
      case: 'Two requests can be covered, and the jury goes before the class, the recital before both',
      terms: { calls: 2, first: ['recital', 'jury'], price: '30.00' },
      given: { calls: ['class 60', 'jury 20', 'recital 60'] },
      owed: '40.00',
    },
    {
      case: 'Of three half hours in a row two are covered, and the fourth after a pause: 90 minutes at 30.00',
      terms: { minutes: 120, inARow: 2, price: '30.00' },
      given: {
        calls: [
          'rehearsal 30 on 2026-03-04 at 10:00',
          'rehearsal 30 on 2026-03-04 at 10:30',
          'rehearsal 30 on 2026-03-04 at 11:00',
          'rehearsal 30 on 2026-03-04 at 14:00',
        ],
      },
      owed: '45.00',
    },
  ],
});

/** Draws in the order calls happen, but those of the first kinds before all others, kind by kind. */
function draw(terms: Terms, desk: Desk, clause: ClauseHead): void {
  const lost = desk.lost.get(clause.id);
  const grants =
    lost === undefined ? occasions(desk.open(clause), terms.each, ({ call }) => call, desk.facts) : [];
  const drawn = drawAll(grants, terms, desk.facts.rolledOver?.[clause.id] ?? 0);
  const used = drawn.draws.reduce((sum, { minutes }) => sum + minutes, 0);
  const granted = terms.minutes === undefined ? used : drawn.granted;
  const lapsed = lost === undefined ? drawn.lapsed : granted;
  desk.entitlements.push({
    clause: clause.id,
    granted,
    used,
    left: granted - used - lapsed,
    lapsed,
    draws: drawn.draws,
    ...(terms.calls === undefined
      ? {}
      : { occasions: { granted: terms.calls * Math.max(1, grants.length), used: drawn.draws.length } }),
    ...(lost === undefined ? {} : { lost }),
  });
  if (used > 0) chargeCovered(terms, desk, clause, { granted, used, draws: drawn.draws });
}

interface Draw {
  readonly call: string;
  readonly minutes: number;
}

/** Occasion by occasion: what one leaves lapses once there is another, or serves it where it rolls over. */
function drawAll(grants: readonly Occasion<Item>[], terms: Terms, rolledOver: number) {
  const each = terms.minutes ?? Number.POSITIVE_INFINITY;
  const draws: Draw[] = [];
  let lapsed = 0;
  let left = terms.rollsOver ? rolledOver : 0;
  let granted = left + each * Math.max(1, grants.length);
  for (const { of } of grants) {
    if (!terms.rollsOver) {
      lapsed += left;
      left = 0;
    }
    const drawn = drawOne(of, left + each, terms);
    draws.push(...drawn.draws);
    left = drawn.left;
  }
  if (terms.minutes === undefined) granted = lapsed = 0;
  return { draws, granted, lapsed };
}

function drawOne(items: readonly Item[], minutes: number, terms: Terms): { draws: Draw[]; left: number } {
  const draws: Draw[] = [];
  let left = minutes;
  const row = rowOf(terms.inARow);
  for (const item of firstOf(items, terms.first)) {
    if (draws.length === terms.calls) break;
    const open = item.counted - item.covered;
    const taken = Math.min(open, left);
    if (taken === 0 || !row(item.call)) continue;
    item.covered += taken;
    item.settled = taken === open;
    left -= taken;
    draws.push({ call: item.call.id, minutes: taken });
  }
  return { draws, left };
}

/** Whether one more call may be covered, when so many without a pause already are. */
function rowOf(most = Number.POSITIVE_INFINITY): (call: Call) => boolean {
  let length = 0;
  let endsAt = Number.NEGATIVE_INFINITY;
  return ({ planned }) => {
    const { at, minutes } = whenOf(planned);
    const next = at <= endsAt ? length + 1 : 1;
    if (next > most) return false;
    length = next;
    endsAt = at + minutes * 60_000;
    return true;
  };
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

function firstOf(items: readonly Item[], first: readonly CallKind[] = []): Item[] {
  const place = ({ call }: Item) => (first.includes(call.kind) ? first.indexOf(call.kind) : first.length);
  return items.toSorted((one, other) => place(one) - place(other));
}

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for']; payer: string }): string {
  const { voice } = said;
  const price = terms.price > 0n ? ` at ${voice.rate(terms.price, 60)}` : '';
  const first = terms.first ? `, ${voice.list(terms.first.map(plural))} first` : '';
  const row =
    terms.inARow === undefined
      ? ''
      : `, at most ${terms.inARow === 1 ? 'one call' : `${terms.inARow} calls`} without a pause`;
  const rolls = terms.rollsOver ? `; what one ${terms.each} leaves serves the next` : '';
  return `The ${said.payer} covers ${sayCovered(terms, said)}${price}${first}${row}${rolls}; what lies beyond is charged by the other clauses.`;
}

function sayCovered({ minutes, calls, each }: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const what = sayCalls(said.for, said.voice, 'calls');
  const length = minutes === undefined ? undefined : said.voice.length(minutes);
  const anew = each === 'engagement' ? 'in all' : `each ${each}`;
  if (calls !== undefined) return `${calls} of ${what} ${anew}${length ? `, up to ${length} together` : ''}`;
  return each === 'call' ? `up to ${length} each of ${what}` : `${length} of ${what} ${anew}`;
}
