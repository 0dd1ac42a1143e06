// What each absence of the pianist takes off, before it is held to the pay.

import { chargedMinutes } from '@colla/hours';
import type { Charge } from '../charge.ts';
import type { Desk } from '../desk.ts';
import { fitsCall } from '../fit.ts';
import { groupsOf } from '../groups.ts';
import type { Item } from '../item.ts';
import type { ClauseHead } from '../kind.ts';
import type { Portion } from '../lineage.ts';
import { type Each, type Occasion, occasionOf, occasions } from '../occasion.ts';
import { unitOf, type Voice } from '../voice.ts';
import { type Excuse, forgiving } from './excuse.ts';
import { sayNotice } from './scale.ts';

/** By what pay is docked: amounts are minor units, a share is in basis points. */
interface Terms {
  readonly by:
    | { readonly as: 'amount'; readonly amount: bigint; readonly each: Each }
    | { readonly as: 'time'; readonly price: bigint; readonly per: number; readonly increment: number }
    | { readonly as: 'share'; readonly share: number; readonly each: Each }
    | { readonly as: 'part missed'; readonly of: 'calls' | 'time'; readonly each: Each };
  readonly on?: readonly string[] | undefined;
  readonly excused?: Excuse | undefined;
}
type By<As extends Terms['by']['as']> = Extract<Terms['by'], { as: As }>;

/** What is taken off once, without its name, and what pay it is taken of where it is a share or a part. */
export interface Docking {
  readonly charge: Omit<Charge, 'what'>;
  readonly of?: readonly Portion[];
}

interface Place {
  readonly desk: Desk;
  readonly clause: ClauseHead;
  readonly on: readonly string[] | undefined;
}

/** What the absences take off that are this clause's to dock and not forgiven. */
export function dockings({ by, on, excused }: Terms, desk: Desk, clause: ClauseHead): Docking[] {
  const forgives = forgiving(excused, desk.facts);
  const absences = desk.absences(clause).filter(({ call }) => !forgives(call));
  if (by.as === 'time') return absences.map((item) => ofTime(by, item, desk));
  const found = occasions(absences, by.each, ({ call }) => call, desk.facts);
  return by.as === 'amount'
    ? found.map((occasion) => ofSum(by, occasion, desk))
    : found.flatMap((occasion) => ofPay(by, occasion, { desk, clause, on }));
}

function ofSum({ amount, each }: By<'amount'>, { about, of }: Occasion<Item>, desk: Desk): Docking {
  const one = { quantity: { count: 1, of: 1 }, unit: each, rate: amount };
  return { charge: { ...head(of, about, desk.voice), ...one } };
}

function ofTime({ price, per, increment }: By<'time'>, item: Item, { voice }: Desk): Docking {
  const count = chargedMinutes(item.planned, { minimum: 0, increment, round: 'up', grace: 0 });
  const time = { quantity: { count, of: per }, unit: unitOf(per), rate: price };
  return { charge: { ...head([item], item.call.id, voice), ...time } };
}

/** For each payer, of what they pay for the same occasion, before any absence. */
function ofPay(by: By<'share' | 'part missed'>, occasion: Occasion<Item>, place: Place): Docking[] {
  const { desk, clause, on } = place;
  const { about, of } = occasion;
  const paid = desk
    .portionsOf({ ...clause, for: {} }, on)
    .filter(({ line }) => !desk.isOfAbsence(line))
    .filter(({ line }) => occasionOf(desk.item(line.calls[0])?.call, by.each, desk.facts) === about);
  const byPayer = groupsOf(paid, ({ line }) => line.payer);
  return [...byPayer].map(([payer, portions]) => {
    const rate = portions.reduce((sum, { amount }) => sum + amount, 0n);
    const charge = {
      ...head(of, about === undefined ? payer : `${about}/${payer}`, desk.voice),
      ...(by.as === 'share' ? shareFor(by, of, desk.voice) : partMissed(by, occasion, place)),
      payer,
      unit: `of ${desk.voice.money(rate)}`,
      rate,
    };
    return { charge, of: portions };
  });
}

function shareFor({ share }: By<'share'>, { length }: readonly Item[], voice: Voice) {
  const times = length === 1 ? '' : `${length} × `;
  return { quantity: { count: share * length, of: 10_000 }, said: `${times}${voice.share(share)}` };
}

/** Of all calls of the occasion as agreed, whatever became of them. */
function partMissed({ of, each }: By<'part missed'>, occasion: Occasion<Item>, { desk, clause }: Place) {
  const { reasons, noticeHours, ...kept } = clause.for;
  const all = desk.items.filter(
    ({ call }) => fitsCall(kept, call, desk.facts) && occasionOf(call, each, desk.facts) === occasion.about,
  );
  const measure = (items: readonly Item[]) =>
    of === 'calls' ? items.length : items.reduce((sum, { planned }) => sum + planned, 0);
  const quantity = { count: measure(occasion.of), of: Math.max(1, measure(all)) };
  return { quantity, said: `${quantity.count}/${quantity.of}` };
}

function head(missed: readonly Item[], about: string | undefined, voice: Voice) {
  return {
    category: 'discount' as const,
    sign: -1n as const,
    calls: missed.map(({ call }) => call.id),
    ...(about === undefined ? {} : { about }),
    facts: missed.map((item) => ({ name: 'missed', value: sayAbsence(item, voice) })),
  };
}

/** “rehearsal, illness, 30 h before the rehearsal”, “jury, no word came”. */
function sayAbsence({ call: { kind, label, planned, standing } }: Item, voice: Voice): string {
  const why = standing.is === 'cancelled' || standing.is === 'missed' ? standing.reason : 'other';
  const word =
    standing.is === 'cancelled'
      ? sayNotice('days', standing.at, { start: planned.start, kind }, voice)
      : 'no word came';
  return [label ?? kind, ...(why === 'other' ? [] : [why]), word].join(', ');
}
