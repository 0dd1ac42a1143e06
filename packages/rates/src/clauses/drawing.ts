// How calls draw on what is granted: occasion by occasion, those of the first kinds before all others.

import { whenOf } from '@colla/calendar';
import type { Call, CallKind } from '@colla/hours';
import type { Item } from '../item.ts';
import type { Occasion } from '../occasion.ts';

/** What is granted, and how it is drawn on. */
export interface Granting {
  readonly minutes?: number | undefined;
  readonly calls?: number | undefined;
  readonly first?: readonly CallKind[] | undefined;
  readonly inARow?: number | undefined;
  readonly rollsOver: boolean;
}

/** A call at the counter: what it took of what it needed, what that left, and why it took nothing. */
export interface Taken {
  readonly call: Call;
  readonly needed: number;
  readonly minutes: number;
  readonly left: number;
  readonly why?: 'nothing left' | 'no call left' | 'too many in a row';
}

/** One occasion, drawn on. In minutes; where only calls are granted, what they took counts as granted. */
export interface Drawing {
  readonly about?: string;
  readonly brought: number;
  readonly granted: number;
  readonly used: number;
  /** Of what is used, what calls to come are to draw. */
  readonly planned: number;
  readonly left: number;
  readonly lapsed: number;
  readonly passedOn: number;
  readonly taken: readonly Taken[];
}

/**
 * Occasion by occasion: what one leaves lapses once there is another, or serves it where it rolls over. Where no call
 * draws, what would be granted once stands alone; all of it lapses where it is lost.
 */
export function drawAll(
  due: readonly Occasion<Item>[],
  terms: Granting,
  rolledOver: number,
  isLost: boolean,
): Drawing[] {
  const all = due.length > 0 ? due : [{ of: [] }];
  let brought = terms.rollsOver ? rolledOver : 0;
  return all.map(({ about, of }, index): Drawing => {
    const granted = terms.minutes ?? Number.POSITIVE_INFINITY;
    const taken = drawOne(of, brought + granted, terms);
    const used = minutesOf(taken);
    const rest = terms.minutes === undefined ? 0 : brought + terms.minutes - used;
    const drawing = {
      ...(about === undefined ? {} : { about }),
      brought,
      granted: terms.minutes ?? used,
      used,
      planned: minutesOf(taken.filter(({ call }) => isToCome(call))),
      ...restOf(rest, { rollsOver: terms.rollsOver, isLost, isLast: index === all.length - 1 }),
      taken,
    };
    brought = drawing.passedOn;
    return drawing;
  });
}

function minutesOf(taken: readonly Taken[]): number {
  return taken.reduce((sum, { minutes }) => sum + minutes, 0);
}

/** Whether a call is neither played nor fallen yet. */
export function isToCome({ standing }: Call): boolean {
  return standing.is === 'agreed' || standing.is === 'held';
}

/** What becomes of what an occasion leaves. */
function restOf(rest: number, of: { rollsOver: boolean; isLost: boolean; isLast: boolean }) {
  const none = { left: 0, lapsed: 0, passedOn: 0 };
  if (of.isLost) return { ...none, lapsed: rest };
  if (of.isLast) return { ...none, left: rest };
  return of.rollsOver ? { ...none, passedOn: rest } : { ...none, lapsed: rest };
}

function drawOne(items: readonly Item[], minutes: number, terms: Granting): Taken[] {
  let left = minutes;
  let covered = 0;
  const row = rowOf(terms.inARow);
  const needing = items.filter(({ counted, covered }) => counted > covered);
  return firstOf(needing, terms.first).map((item): Taken => {
    const { call } = item;
    const needed = item.counted - item.covered;
    const why = whyNot();
    if (why) return { call, needed, minutes: 0, left, why };
    const taken = Math.min(needed, left);
    item.covered += taken;
    item.settled = taken === needed;
    left -= taken;
    covered += 1;
    return { call, needed, minutes: taken, left };

    function whyNot(): Taken['why'] {
      if (covered === terms.calls) return 'no call left';
      if (left === 0) return 'nothing left';
      return row(call) ? undefined : 'too many in a row';
    }
  });
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

function firstOf(items: readonly Item[], first: readonly CallKind[] = []): Item[] {
  const place = ({ call }: Item) => (first.includes(call.kind) ? first.indexOf(call.kind) : first.length);
  return items.toSorted((one, other) => place(one) - place(other));
}
