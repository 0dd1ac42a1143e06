// A limit: the most or the least that some clauses charge together, for each call, day, week, month, or in all.

import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { amountField, wordsField } from '../fields.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import type { Line } from '../line.ts';
import type { Portion } from '../lineage.ts';
import { EACH, occasions, sayEach, withThoseBetween } from '../occasion.ts';
import { capital, sayCharges, sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';

/** What a limit is called that has no name of its own. */
const UNNAMED = 'Limit';

const schema = perCurrency((currency) =>
  z.strictObject({
    what: wordsField('Called').default(UNNAMED),
    on: z.array(z.string().min(1)).min(1).readonly().optional().meta({
      title: 'What these clauses charge (everything, for the engagement, where none is named)',
      unit: 'clause',
    }),
    each: z.enum(EACH).default('engagement').meta({ title: 'For each' }),
    least: amountField(currency, 'At least').optional(),
    most: amountField(currency, 'At most').optional(),
    rounded: z
      .strictObject({
        to: amountField(currency, 'To a multiple of'),
        way: z.enum(['up', 'to the nearest', 'down']).default('up').meta({ title: 'Rounded' }),
      })
      .optional()
      .meta({ title: 'Rounded' }),
    through: z
      .boolean()
      .default(false)
      .meta({ title: 'The least also where there is none, from the first to the last' }),
  }),
);
type Terms = z.output<ReturnType<typeof schema>>;

export const limit = clauseKind({
  kind: 'limit',
  title: 'Limit',
  help: 'Holds what some clauses charge between a least and a most: a week that costs no more than so much, the cheaper of hours and week.',
  schema,
  rivalry: () => undefined,
  each: ({ each }) => each,
  sentence,
  names: (terms) => terms.on ?? [],
  gathers: () => true,
  rank,
  contradictions: (terms) => {
    const { each, on, least, most, rounded, through } = terms;
    if (least === undefined && most === undefined && !rounded)
      return ['It limits nothing: give the most, the least, or both, or what it is rounded to.'];
    if (rounded?.to === 0n) return ['It is rounded to a multiple of nothing: give an amount, such as 5.00.'];
    if (each !== 'engagement' && !on)
      return [`What is for the whole engagement belongs to no one ${each}: name the clauses that it holds.`];
    if (through && (least === undefined || (each !== 'day' && each !== 'week' && each !== 'month')))
      return [
        'Only the least of days, weeks and months can stand where there is none: say it so, or leave it out.',
      ];
    if (least !== undefined && most !== undefined && least > most)
      return ['The least is more than the most: exchange the two amounts.'];
    return hasMultiple(terms)
      ? []
      : ['No multiple of what it is rounded to lies within its bounds: change one of the amounts.'];
  },
  phases: { limits: hold },
  examples: [
    {
      case: 'Twelve hours at 40.00 come to 480.00, and a week is 400.00 at most: 80.00 come off',
      terms: { what: 'The week instead', on: ['hours'], each: 'week', most: '400.00' },
      given: { calls: ['6 × rehearsal 120'] },
      with: [{ id: 'hours', kind: 'hourly', for: {}, terms: { price: '40.00' } }],
      owed: '-80.00',
    },
    {
      case: 'One short lesson of 15.00 is made up to the least of 25.00',
      terms: { least: '25.00' },
      given: { calls: ['lesson 30'] },
      with: [{ id: 'hours', kind: 'hourly', for: {}, terms: { price: '30.00' } }],
      owed: '10.00',
    },
    {
      case: 'Mileage is 40.00 a day at most: 60 and 50 km at 0.50 on one day are 55.00, the 70 of the next 35.00',
      terms: { on: ['way'], each: 'day', most: '40.00' },
      given: { legs: ['60 km', '50 km', '70 km on 2026-03-03'] },
      with: [{ id: 'way', kind: 'travel', for: {}, terms: { perUnit: '0.50' } }],
      owed: '-15.00',
    },
    {
      case: 'The fee of 61.25 is rounded up to the next 5.00',
      terms: { what: 'Rounded', on: ['hours'], rounded: { to: '5.00' } },
      given: { calls: ['rehearsal 105'] },
      with: [{ id: 'hours', kind: 'hourly', for: {}, terms: { price: '35.00' } }],
      owed: '3.75',
    },
    {
      case: 'At least 60.00 a month from the first to the last: 20.00 and 60.00 are made up, March is not',
      terms: { on: ['hours'], each: 'month', least: '60.00', through: true },
      given: {
        calls: ['lesson 60 on 2026-01-12', 'lesson 90 on 2026-03-02'],
      },
      with: [{ id: 'hours', kind: 'hourly', for: {}, terms: { price: '40.00' } }],
      owed: '80.00',
    },
    {
      case: 'Two hours of 40.00 and half of one cancelled late are 100.00, of which a week of 90.00 takes off 10.00',
      terms: { on: ['hours'], each: 'week', most: '90.00' },
      given: { calls: ['3 × rehearsal 60'], fallen: [{ call: 2, at: '2026-03-04T09:00' }] },
      with: [
        { id: 'hours', kind: 'hourly', for: {}, terms: { price: '40.00' } },
        {
          id: 'notice',
          kind: 'cancellation',
          for: {},
          terms: { scale: [], otherwise: { owes: 'share', share: 5000 } },
        },
      ],
      owed: '-10.00',
    },
  ],
});

/**
 * From the shorter occasion to the longer, of these what names clauses before what holds everything, and the
 * least before the most: each limit counts what those before it took off or made up.
 */
function rank({ each, on, most }: Terms): number {
  return EACH.indexOf(each) * 4 + (on ? 0 : 2) + (most === undefined ? 0 : 1);
}

/**
 * Each payer's part is held for itself; a line for several calls belongs to the occasion of its first, a journey to its
 * day. What is made up where there is nothing is for what is charged elsewhere, in proportion.
 */
function hold(terms: Terms, desk: Desk, clause: ClauseHead): void {
  const portions = desk.portionsOf(clause, terms.on);
  for (const payer of new Set(portions.map(({ line }) => line.payer))) {
    const theirs = portions.filter(({ line }) => line.payer === payer);
    const placeOf = ({ line }: Portion) => desk.item(line.calls[0])?.call ?? line.on;
    const found = occasions(theirs, terms.each, placeOf, desk.facts);
    for (const { about, of } of terms.through ? withThoseBetween(found, terms.each) : found) {
      const at = about === undefined ? payer : `${payer}:${about}`;
      const line = holdOne(of, { payer, about: at }, terms, desk, clause);
      if (line) desk.lineage.stand(line, of.length > 0 ? of : theirs);
    }
  }
}

function holdOne(
  held: readonly Portion[],
  whose: { payer: string; about: string },
  terms: Terms,
  desk: Desk,
  clause: ClauseHead,
): Line | undefined {
  const sum = held.reduce((sum, { amount }) => sum + amount, 0n);
  const within = between(sum, terms);
  const kept = rounded(within, terms);
  if (kept === sum) return undefined;
  const { money } = desk.voice;
  return desk.charge(clause, {
    category: kept < sum ? 'discount' : 'supplement',
    what: terms.what,
    calls: [...new Set(held.flatMap(({ line }) => line.calls))],
    ...whose,
    facts: [
      { name: 'without limit', value: money(sum) },
      ...(within === sum ? [] : [{ name: within < sum ? 'at most' : 'at least', value: money(within) }]),
      ...(kept === within ? [] : [{ name: 'rounded to', value: money(kept) }]),
    ],
    quantity: { count: 1, of: 1 },
    unit: 'limit',
    rate: kept < sum ? sum - kept : kept - sum,
    sign: kept < sum ? -1n : 1n,
  });
}

function between(sum: bigint, { least, most }: Terms): bigint {
  if (most !== undefined && sum > most) return most;
  return least !== undefined && sum < least ? least : sum;
}

/**
 * To a multiple; half way up to the nearest, and of what is below nothing as of what is above. Never past the most or
 * the least: from there the other way.
 */
function rounded(sum: bigint, { rounded: by, least, most }: Terms): bigint {
  if (!by) return sum;
  const kept = toMultiple(sum, by);
  if (most !== undefined && kept > most) return toMultiple(most, { ...by, way: 'down' });
  return least !== undefined && kept < least ? toMultiple(least, { ...by, way: 'up' }) : kept;
}

function toMultiple(sum: bigint, { to, way }: NonNullable<Terms['rounded']>): bigint {
  const sign = sum < 0n ? -1n : 1n;
  const amount = sign * sum;
  const more = { up: to - 1n, 'to the nearest': to / 2n, down: 0n }[way];
  return sign * ((amount + more) / to) * to;
}

/** Whether anything but nothing can be kept: a multiple between the least and the most. */
function hasMultiple({ rounded, least = 0n, most }: Terms): boolean {
  if (!rounded || most === undefined) return true;
  const highest = toMultiple(most, { ...rounded, way: 'down' });
  return highest > 0n && highest >= least;
}

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const bounds = [
    terms.least === undefined ? undefined : `at least ${voice.money(terms.least)}`,
    terms.most === undefined ? undefined : `at most ${voice.money(terms.most)}`,
    sayRounded(terms, voice),
  ].filter((bound) => bound !== undefined);
  const through = terms.through
    ? `, also for a ${terms.each} without any between the first and the last`
    : '';
  const each = terms.each === 'call' ? 'for each call' : sayEach(terms.each);
  const charges = `${sayCharges(terms.on, voice)}${sayConditions(said.for, voice)}`;
  const called = terms.what === UNNAMED ? charges : `${terms.what}: ${charges}`;
  return `${capital(called)} is ${voice.list(bounds)} ${each}${through}.`;
}

function sayRounded({ rounded, least, most }: Terms, voice: Voice): string | undefined {
  if (!rounded) return undefined;
  const { to, way } = rounded;
  const held = (most !== undefined && way !== 'down') || (least !== undefined && way !== 'up');
  const how = way === 'to the nearest' ? way : `${way} to a`;
  return `rounded ${how} multiple of ${voice.money(to)}${held ? ' within that' : ''}`;
}
