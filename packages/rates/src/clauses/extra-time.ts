// Time that is charged on top or taken off: beyond what is planned or included, within some hours of the day, or waited.

import { minutesWithin } from '@colla/calendar';
import { chargedMinutes, timesOf, waitedMinutes } from '@colla/hours';
import type { Currency } from '@colla/money';
import { z } from 'zod';
import type { Desk } from '../desk.ts';
import { hoursSchema } from '../dimension.ts';
import { amountField, minutesField, shareField } from '../fields.ts';
import { type Item, lengthOf } from '../item.ts';
import type { ClauseHead } from '../kind.ts';
import type { UsedFact } from '../line.ts';
import type { Portion } from '../lineage.ts';
import { EACH, occasions } from '../occasion.ts';
import { unitOf, type Voice } from '../voice.ts';
import { graceContradiction } from './grace.ts';

const timing = {
  increment: minutesField('Charged in steps of (minutes)', { least: 1 }).default(15),
  grace: minutesField('Minutes forgiven before a new step').default(0),
  of: z
    .enum(['time beyond', 'hours of the day', 'waiting'])
    .default('time beyond')
    .meta({ title: 'Time that counts' }),
  beyond: minutesField('Only beyond (minutes); of time beyond the planned time where left out', {
    least: 1,
  }).optional(),
  between: hoursSchema.optional().meta({ title: 'Between these hours of the day' }),
  each: z.enum(EACH).default('call').meta({ title: 'Reckoned together for each' }),
};

/** Time at a price. */
export function timeSchema(currency: Currency) {
  return z.strictObject({
    as: z.literal('time'),
    price: amountField(currency, 'Price of that time'),
    per: minutesField('For each (minutes)', { least: 1 }).default(60),
    ...timing,
  });
}

/** Time at a multiple of what the call itself is charged for as much time: time and a half is 150 %. */
export const multipleSchema = z.strictObject({
  as: z.literal('multiple of the fee'),
  multiple: shareField('Of the fee for as much time', { most: 100_000 }),
  ...timing,
});

export type ByTime = z.output<ReturnType<typeof timeSchema>> | z.output<typeof multipleSchema>;

/** Where the time is charged, and the fees of which it may be a multiple. */
interface Place {
  readonly what: string;
  readonly category: 'supplement' | 'discount';
  readonly sign: 1n | -1n;
  readonly desk: Desk;
  readonly clause: ClauseHead;
}

/** Steps are for all the time of an occasion: each call is charged what it adds to those before it. */
export function addTime(by: ByTime, fees: readonly Portion[], place: Place): void {
  const { desk, clause } = place;
  for (const { of } of occasions(desk.standing(clause), by.each, ({ call }) => call, desk.facts)) {
    let time = 0;
    let before = 0;
    for (const item of of) {
      time += timeOf(item, by);
      const until = chargedMinutes(Math.max(0, time - freeOf(item, by)), { ...by, minimum: 0, round: 'up' });
      if (until > before) charge({ item, minutes: until - before }, by, fees, place);
      before = until;
    }
  }
}

/** The minutes of a call that count. */
function timeOf({ call, played }: Item, { of, between }: ByTime): number {
  if (of === 'waiting') return waitedMinutes(call);
  return of === 'hours of the day' && between ? minutesWithin(between, timesOf(call)) : played;
}

/** The minutes that are not charged here. */
function freeOf({ planned }: Item, { of, beyond }: ByTime): number {
  return beyond ?? (of === 'time beyond' ? planned : 0);
}

interface Extra {
  readonly item: Item;
  /** As they are charged. */
  readonly minutes: number;
}

function charge(extra: Extra, by: ByTime, fees: readonly Portion[], place: Place): void {
  const { item, minutes } = extra;
  const { desk, clause, what, category, sign } = place;
  const { id } = item.call;
  const head = { category, what, sign, calls: [id], facts: factsOf(extra, by, desk.voice) };
  if (by.as === 'time') {
    const quantity = { count: minutes, of: by.per };
    desk.charge(clause, { ...head, about: id, quantity, unit: unitOf(by.per), rate: by.price });
    return;
  }
  for (const { line, amount } of fees) {
    if (!line.calls.includes(id)) continue;
    const planned = line.calls.reduce((sum, call) => sum + (desk.item(call)?.planned ?? 0), 0);
    if (planned === 0) continue;
    desk.charge(clause, {
      ...head,
      about: `${id}:${line.key}`,
      payer: line.payer,
      facts: [...head.facts, { name: 'fee', value: `${line.what} ${desk.voice.money(amount)}` }],
      quantity: { count: minutes * by.multiple, of: planned * 10_000 },
      unit: `of ${desk.voice.money(amount)}`,
      rate: amount,
      said: `${minutes}/${planned} × ${desk.voice.share(by.multiple)}`,
    });
  }
}

function factsOf({ item, minutes }: Extra, by: ByTime, voice: Voice): UsedFact[] {
  const free = freeOf(item, by);
  const planned = by.of === 'time beyond' && by.beyond === undefined;
  return [
    { name: lengthOf(item), value: voice.minutes(item.played) },
    ...(by.of === 'time beyond' ? [] : [{ name: nameOf(by), value: voice.minutes(timeOf(item, by)) }]),
    ...(free > 0 ? [{ name: planned ? 'planned' : 'included', value: voice.minutes(free) }] : []),
    { name: 'charged', value: voice.minutes(minutes) },
  ];
}

function nameOf({ of, between }: ByTime): string {
  return of === 'waiting' || !between ? 'waited' : `from ${between.from} until ${between.until}`;
}

/** What the parameters of extra time contradict. */
export function timeContradictions(by: ByTime): string[] {
  const { of, beyond, between, each } = by;
  return [
    ...graceContradiction(by),
    ...(of === 'hours of the day' && !between
      ? ['It counts hours of the day: give from when until when.']
      : []),
    ...(of !== 'hours of the day' && between
      ? ['Hours of the day are given, but other time counts: choose “hours of the day”, or leave them out.']
      : []),
    ...(of === 'time beyond' && each !== 'call' && beyond === undefined
      ? [
          `The time of ${each === 'engagement' ? 'an' : 'a'} ${each} is reckoned together: say beyond how many minutes of it.`,
        ]
      : []),
  ];
}

/** “beyond 2 hours of a day”, “from 23:00 until 06:00”, “for waiting from the agreed start”. */
export function sayTime(by: ByTime, voice: Voice): string {
  const { of, beyond, between, each } = by;
  const ofEach = each === 'call' ? '' : each === 'engagement' ? ' in all' : ` of a ${each}`;
  const over = beyond === undefined ? '' : `, beyond ${voice.length(beyond)}${ofEach}`;
  if (of === 'hours of the day' && between) return `from ${between.from} until ${between.until}${over}`;
  if (of === 'waiting') return `for waiting from the agreed start${over}`;
  return beyond === undefined ? 'beyond the planned time' : over.slice(2);
}
