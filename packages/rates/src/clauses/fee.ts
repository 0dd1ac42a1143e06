// What a fixed fee charges: call by call, for each day, week, month or term, or for what is counted.

import { chargedMinutes, principalCall } from '@colla/hours';
import type { Charge } from '../charge.ts';
import type { Desk } from '../desk.ts';
import { fitsEngagement } from '../fit.ts';
import { categoryOf, type Item, lengthOf } from '../item.ts';
import type { ClauseHead } from '../kind.ts';
import {
  type Each,
  type Occasion,
  occasionOf,
  occasions,
  withoutOutside,
  withThoseBetween,
} from '../occasion.ts';
import { capital, plural } from '../phrases.ts';
import { unitOf } from '../voice.ts';
import { type Counted, counted } from './counted.ts';
import type { FixedTerms } from './fixed.ts';
import { stretches } from './further.ts';

/** The price of the one that comes after so many. */
function priceAfter(many: number, { price, further }: FixedTerms): bigint {
  return further.findLast(({ after }) => many >= after)?.price ?? price;
}

/** The calls it is to price, each after those before it of the same day, week, month or term, or of all. */
export function priceCalls(terms: FixedTerms, desk: Desk, clause: ClauseHead): void {
  const priced = occasions(desk.toPrice(clause), terms.within, ({ call }) => call, desk.facts);
  for (const { of } of priced)
    for (const [place, item] of of.entries()) priceCall(item, priceAfter(place, terms), terms, desk, clause);
}

function priceCall(item: Item, price: bigint, terms: FixedTerms, desk: Desk, clause: ClauseHead): void {
  const { call } = item;
  item.settled = true;
  const head = {
    category: categoryOf(call),
    what: terms.what ?? capital(call.label ?? call.kind),
    calls: [call.id],
    about: call.id,
  };
  chargeFee({ ...head, unit: call.kind, rate: price }, terms, desk, clause);
  if (terms.beyond && terms.includes !== undefined)
    chargeBeyond(item, { ...terms.beyond, includes: terms.includes }, desk, clause);
}

function chargeBeyond(
  item: Item,
  terms: NonNullable<FixedTerms['beyond']> & { includes: number },
  desk: Desk,
  clause: ClauseHead,
): void {
  const { call, covered, played } = item;
  const beyond = Math.max(0, played - covered - terms.includes);
  const charged = chargedMinutes(beyond, { ...terms, minimum: 0, round: 'up' });
  if (charged === 0) return;
  desk.charge(clause, {
    category: categoryOf(call),
    what: `${capital(call.label ?? call.kind)}, time beyond ${desk.voice.length(terms.includes)}`,
    calls: [call.id],
    about: `${call.id}:beyond`,
    facts: [
      { name: lengthOf(item), value: desk.voice.minutes(played) },
      ...(covered > 0 ? [{ name: 'covered', value: desk.voice.minutes(covered) }] : []),
      { name: 'included', value: desk.voice.minutes(terms.includes) },
      { name: 'charged', value: desk.voice.minutes(charged) },
    ],
    quantity: { count: charged, of: terms.per },
    unit: unitOf(terms.per),
    rate: terms.price,
  });
}

/**
 * One fee for all the calls of a day, week, month or term, or of the whole, that no closer clause prices. Without
 * any calls, the whole is owed once, and a term for each the place has told: a stipend.
 */
export function priceOccasions(
  terms: FixedTerms,
  each: Exclude<FixedTerms['each'], 'call' | Counted>,
  desk: Desk,
  clause: ClauseHead,
): void {
  const before = new Map<string | undefined, number>();
  for (const occasion of dueTo(terms, each, desk, clause)) {
    const within = occasionOf(occasion.of[0]?.call, terms.within, desk.facts);
    const place = before.get(within) ?? 0;
    before.set(within, place + 1);
    const calls = occasion.of.map(({ call }) => call);
    const principal = principalCall(calls);
    for (const item of occasion.of) item.settled = true;
    const head = {
      category: principal ? categoryOf(principal) : 'performance',
      what: terms.what ?? capital(each),
      calls: calls.map(({ id }) => id),
      ...(occasion.about === undefined ? {} : { about: occasion.about }),
    };
    chargeFee({ ...head, unit: each, rate: priceAfter(place, terms) }, terms, desk, clause);
  }
}

function dueTo(
  { through }: FixedTerms,
  each: Each,
  desk: Desk,
  clause: ClauseHead,
): readonly Occasion<Item>[] {
  if (desk.withoutCalls && fitsEngagement(clause.for, desk.facts)) return desk.withoutAny(each);
  const found = withoutOutside(
    occasions(desk.toPrice(clause), each, ({ call }) => call, desk.facts),
    each,
    desk.facts,
  );
  if (!through) return found;
  const otherwise = chargedOtherwise(each, desk, clause);
  return withThoseBetween(found, each).filter(({ about, of }) => of.length > 0 || !otherwise.has(about));
}

/** Occasions with a call for which another way of charging holds: they are not without any. */
function chargedOtherwise(each: Each, desk: Desk, clause: ClauseHead): Set<string | undefined> {
  const standing = new Set(desk.standing({ ...clause, for: {} }));
  const others = desk.items.filter((item) => desk.counts(item) && !standing.has(item));
  return new Set(others.map(({ call }) => occasionOf(call, each, desk.facts)));
}

/** The price, and the share of other prices that comes with it; a share alone stands without a price of nothing. */
function chargeFee(fee: Omit<Charge, 'quantity'>, { and }: FixedTerms, desk: Desk, clause: ClauseHead): void {
  if (!and || fee.rate > 0n) desk.charge(clause, { ...fee, quantity: { count: 1, of: 1 } });
  if (!and) return;
  const { voice } = desk;
  const rate = desk.portionsOf({ ...clause, for: {} }, and.of).reduce((sum, { amount }) => sum + amount, 0n);
  if (rate === 0n) return;
  desk.charge(clause, {
    ...fee,
    about: fee.about === undefined ? 'share' : `${fee.about}:share`,
    quantity: { count: and.share, of: 10_000 },
    unit: `of ${voice.money(rate)}`,
    rate,
    said: voice.share(and.share),
  });
}

/** Owed where the engagement leaves anything to pay: for an engagement that fell in time nothing is prepared. */
export function priceCounted(terms: FixedTerms, each: Counted, desk: Desk, clause: ClauseHead): void {
  const { count, names } = counted(each, terms, desk, clause);
  if (!desk.stands || !fitsEngagement(clause.for, desk.facts)) return;
  const what = terms.what ?? capital(each === 'minute of music' ? each : plural(each));
  for (const stretch of stretches(0, count, terms.price, terms.further))
    desk.charge(clause, {
      category: 'other',
      what: stretch.after === undefined ? what : `${what}, beyond ${stretch.after}`,
      ...(stretch.after === undefined ? {} : { about: `${stretch.after}` }),
      facts: names.length > 0 ? [{ name: LISTED[each] ?? 'works', value: names.join('; ') }] : [],
      quantity: { count: stretch.count, of: 1 },
      unit: each,
      rate: stretch.price,
    });
}

/** What the names of what was counted are names of; works where nothing is said. */
const LISTED: Readonly<Partial<Record<Counted, string>>> = { hold: 'holds', cost: 'costs' };
