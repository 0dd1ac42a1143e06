// An entitlement: hours that somebody covers, drawn down call by call; what lies beyond goes to the other clauses.

import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { amountField, countField, minutesField } from '../fields.ts';
import type { Drawn, Grant } from '../findings.ts';
import { fitsCall, fitsEngagement } from '../fit.ts';
import type { Item } from '../item.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { EACH, type Occasion, occasions, withoutOutside, withThoseBetween } from '../occasion.ts';
import { plural, sayCalls } from '../phrases.ts';
import { selectorSchema } from '../selector.ts';
import type { Voice } from '../voice.ts';
import { drawAll } from './drawing.ts';
import { sayGrant } from './grant.ts';

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
  if (!fitsEngagement(clause.for, desk.facts)) return;
  const lost = desk.lost.get(clause.id);
  const drawings = drawAll(
    lost === undefined ? dueTo(terms, desk, clause) : [],
    terms,
    desk.facts.rolledOver?.[clause.id] ?? 0,
    lost !== undefined,
  );
  const grants = drawings.map((drawing) => sayGrant(drawing, { ...terms, lost }, desk));
  const sum = (part: (grant: Grant) => number) => grants.reduce((sum, grant) => sum + part(grant), 0);
  const granted = sum((of) => of.granted) + (grants[0]?.brought ?? 0);
  const [used, lapsed] = [sum((of) => of.used), sum((of) => of.lapsed)];
  const draws = grants.flatMap((grant) => grant.draws);
  const drawn = { granted, used, left: granted - used - lapsed, lapsed, draws };
  desk.entitlements.push({
    clause: clause.id,
    ...drawn,
    planned: sum((of) => of.planned),
    grants,
    ...(terms.calls === undefined
      ? {}
      : { occasions: { granted: terms.calls * grants.length, used: draws.length } }),
    ...(lost === undefined ? {} : { lost }),
  });
  if (used > 0) chargeCovered(terms, desk, clause, drawn);
}

/**
 * The occasions for which it is granted: those of calls that may draw. Where it rolls over, all from the first to the
 * last with an agreed call, whatever became of it: what one passes on does not hang on whether the next has a call.
 */
function dueTo({ each, rollsOver }: Terms, desk: Desk, clause: ClauseHead): Occasion<Item>[] {
  const drawing = new Set(desk.open(clause));
  const agreed = rollsOver
    ? desk.items.filter(({ call }) => fitsCall(clause.for, call, desk.facts))
    : drawing;
  const found = occasions([...agreed], each, ({ call }) => call, desk.facts);
  const due = withoutOutside(found, each, desk.facts);
  if (!rollsOver) return due;
  return withThoseBetween(due, each, desk.facts).map(({ of, ...occasion }) => ({
    ...occasion,
    of: of.filter((item) => drawing.has(item)),
  }));
}

function chargeCovered(
  terms: Terms,
  desk: Desk,
  clause: ClauseHead,
  drawn: Pick<Drawn, 'granted' | 'used' | 'left' | 'lapsed' | 'draws'>,
): void {
  desk.charge(clause, {
    category: 'entitlement',
    what: 'Hours covered',
    calls: drawn.draws.map(({ call }) => call),
    facts: [
      { name: 'granted', value: desk.voice.minutes(drawn.granted) },
      { name: 'used', value: desk.voice.minutes(drawn.used) },
      { name: 'left', value: desk.voice.minutes(drawn.left) },
      ...(drawn.lapsed > 0 ? [{ name: 'lapsed', value: desk.voice.minutes(drawn.lapsed) }] : []),
    ],
    quantity: { count: drawn.used, of: 60 },
    unit: 'hour',
    rate: terms.price,
    said: desk.voice.minutes(drawn.used),
  });
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
  if (calls === undefined)
    return each === 'call' ? `up to ${length} each of ${what}` : `${length} of ${what} ${anew}`;
  const count = calls === 1 ? 'one call' : `${calls} calls`;
  const of = what === 'calls' ? '' : `, of ${what}`;
  return `${count} ${anew}${of}${length ? `, up to ${length}${calls === 1 ? '' : ' together'}` : ''}`;
}
