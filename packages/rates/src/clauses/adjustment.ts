// What supplements and discounts have in common: a condition, and a sum, a share, or a rate for time beyond.

import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { amountField, shareField, wordsField } from '../fields.ts';
import { fitsEngagement } from '../fit.ts';
import type { Item } from '../item.ts';
import { type ClauseHead, perCurrency } from '../kind.ts';
import type { Portion } from '../lineage.ts';
import { EACH, type Each, type Occasion, occasions } from '../occasion.ts';
import { capital, sayCalls, sayCharges, sayConditions } from '../phrases.ts';
import type { Voice } from '../voice.ts';
import { addTime, multipleSchema, sayTime, timeContradictions, timeSchema } from './extra-time.ts';
import { sayGrace } from './grace.ts';

export const adjustmentSchema = perCurrency((currency) =>
  z.strictObject({
    what: wordsField('Called'),
    by: z
      .discriminatedUnion('as', [
        z.strictObject({
          as: z.literal('amount'),
          amount: amountField(currency, 'Amount'),
          each: z.enum(EACH).default('call').meta({ title: 'For each' }),
        }),
        z.strictObject({
          as: z.literal('share'),
          share: shareField('Share', { most: 100_000 }),
          together: z.boolean().default(false).meta({ title: 'Taken once, of the sum' }),
        }),
        timeSchema(currency),
        multipleSchema,
      ])
      .meta({ title: 'How it is reckoned' }),
    on: z
      .array(z.string().min(1))
      .min(1)
      .readonly()
      .optional()
      .meta({ title: 'Only on what these clauses charge', unit: 'clause' }),
  }),
);
export type Adjustment = z.output<ReturnType<typeof adjustmentSchema>>;
type By<As extends Adjustment['by']['as']> = Extract<Adjustment['by'], { as: As }>;

interface Direction {
  readonly category: 'supplement' | 'discount';
  readonly sign: 1n | -1n;
}

/** Where an adjustment stands: its words, its clause, the desk it works at. */
interface Place extends Direction {
  readonly what: string;
  readonly desk: Desk;
  readonly clause: ClauseHead;
}

/**
 * Writes the lines of a supplement or discount. A share is taken of fees only (a discount's also of supplements),
 * never of another of its own sort unless it names it; so two of them do not depend on which is written first.
 */
export function applyAdjustment(
  { what, by, on }: Adjustment,
  desk: Desk,
  clause: ClauseHead,
  direction: Direction,
): void {
  const place = { ...direction, what, desk, clause };
  if (by.as === 'amount') addAmounts(by, place);
  else if (by.as === 'time' || by.as === 'multiple of the fee') addTime(by, basesOf(on, place), place);
  else if (by.together) addShareOfSum(by, basesOf(on, place), place);
  else addShares(by, basesOf(on, place), place);
}

/** What a share is taken of. */
function basesOf(on: readonly string[] | undefined, { desk, clause, category }: Place): Portion[] {
  const own = category === 'discount' ? ['discount'] : ['discount', 'supplement'];
  return desk
    .portionsOf(clause, on)
    .filter(({ line }) =>
      on ? on.includes(line.clause) || !desk.lineage.takesOff(line) : !own.includes(line.category),
    );
}

function addShares({ share }: By<'share'>, bases: readonly Portion[], place: Place): void {
  for (const base of bases) {
    const { calls, key, payer, what } = base.line;
    const line = place.desk.charge(place.clause, {
      ...ofBase(share, base.amount, place),
      calls,
      about: key,
      payer,
      facts: [{ name: 'on', value: what }],
    });
    place.desk.lineage.take(line, [base]);
  }
}

/** One share of everything each payer is charged, rounded once. */
function addShareOfSum({ share }: By<'share'>, bases: readonly Portion[], place: Place): void {
  for (const payer of new Set(bases.map(({ line }) => line.payer))) {
    const theirs = bases.filter(({ line }) => line.payer === payer);
    const sum = theirs.reduce((sum, { amount }) => sum + amount, 0n);
    const line = place.desk.charge(place.clause, {
      ...ofBase(share, sum, place),
      calls: [...new Set(theirs.flatMap(({ line }) => line.calls))],
      about: payer,
      payer,
    });
    place.desk.lineage.take(line, theirs);
  }
}

function ofBase(share: number, base: bigint, { what, category, sign, desk }: Place) {
  return {
    category,
    what,
    quantity: { count: share, of: 10_000 },
    unit: `of ${desk.voice.money(base)}`,
    rate: base,
    sign,
    said: desk.voice.share(share),
  };
}

function addAmounts({ amount, each }: By<'amount'>, { desk, clause, what, category, sign }: Place): void {
  const due: Occasion<Item>[] =
    desk.withoutCalls && fitsEngagement(clause.for, desk.facts)
      ? desk.withoutAny(each)
      : occasions(desk.standing(clause), each, ({ call }) => call, desk.facts);
  for (const occasion of due) {
    desk.charge(clause, {
      category,
      what,
      calls: occasion.of.map(({ call }) => call.id),
      ...(occasion.about === undefined ? {} : { about: occasion.about }),
      quantity: { count: 1, of: 1 },
      unit: each,
      rate: amount,
      sign,
    });
  }
}

/** The occasion for which an adjustment charges at once. */
export function adjustmentEach({ by }: Adjustment): Each {
  if (by.as === 'share') return by.together ? 'engagement' : 'call';
  return by.each;
}

/** What an adjustment's own parameters contradict. */
export function adjustmentContradictions({ by, on }: Adjustment): string[] {
  return [
    ...(by.as === 'time' || by.as === 'multiple of the fee' ? timeContradictions(by) : []),
    ...((by.as === 'amount' || by.as === 'time') && on
      ? ['Only a share or a multiple is taken of what other clauses charge: give one, or name no clauses.']
      : []),
  ];
}

/** The sentence of a supplement (`more`) or discount (`less`). */
export function sayAdjustment(
  { what, by, on }: Adjustment,
  said: { voice: Voice; for: ClauseHead['for'] },
  word: 'more' | 'less',
): string {
  const calls = sayCalls(said.for, said.voice);
  const some = sayCalls(said.for, said.voice, 'calls');
  const conditions = sayConditions(said.for, said.voice);
  return `${capital(what)}: ${sayBy()}.`;

  function sayBy(): string {
    const { voice } = said;
    if (by.as === 'time') {
      return `${calls} are ${voice.rate(by.price, by.per)} ${word} ${sayTime(by, voice)}, charged ${voice.steps(by.increment)}${forgiven(by.grace)}`;
    }
    if (by.as === 'multiple of the fee') {
      const fee = on ? sayCharges(on, voice) : 'their fee';
      return `time ${sayTime(by, voice)} of ${calls} is ${word === 'more' ? 'charged' : 'taken off'} ${voice.steps(by.increment)} at ${voice.share(by.multiple)} of ${fee} for as much time${forgiven(by.grace)}`;
    }
    if (by.as === 'amount') {
      const amount = `${voice.money(by.amount)} ${word}`;
      if (by.each === 'engagement') return `the engagement${conditions} is ${amount}`;
      return by.each === 'call'
        ? `${calls} are ${amount} each`
        : `${amount} for each ${by.each} with ${some}`;
    }
    const once = by.together ? ', taken once of the sum' : '';
    if (on) return `${voice.share(by.share)} ${word} on ${sayCharges(on, voice)}${conditions}${once}`;
    return `${calls} are ${voice.share(by.share)} ${word}${once}`;
  }
}

function forgiven(grace: number): string {
  const said = sayGrace(grace);
  return said === undefined ? '' : `, ${said}`;
}
