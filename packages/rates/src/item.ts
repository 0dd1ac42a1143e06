// A call on the desk: how much of it counts, what has been taken of it, how it fell.

import { whenOf } from '@colla/calendar';
import { type Call, PERFORMANCES, timesOf, waitedMinutes } from '@colla/hours';
import type { Counting } from './kind.ts';
import type { Category } from './line.ts';
import type { Verdict } from './verdict.ts';

/** A call that counts, and how much of it other clauses have taken. */
export interface Item {
  readonly call: Call;
  /** Minutes planned. */
  readonly planned: number;
  /** Minutes as played, or as planned where it was not played. */
  readonly played: number;
  /** Minutes that count, as the clause that prices it says; as played where it says nothing. */
  readonly counted: number;
  /** Minutes covered by entitlements and packages. */
  covered: number;
  /** True once a clause has put a price on it or covers it whole. */
  settled: boolean;
  verdict: Verdict | undefined;
  /** What was charged for it before it fell, in minor units; nothing where it stands. */
  feeBeforeFall: bigint;
}

/** A call that nobody has taken anything of yet. */
export function itemOf(call: Call, count: Counting): Item {
  const planned = whenOf(call.planned).minutes;
  const played = whenOf(timesOf(call)).minutes;
  const counted = count({ planned, played, waited: waitedMinutes(call) });
  return {
    call,
    planned,
    played,
    counted,
    covered: 0,
    settled: false,
    verdict: undefined,
    feeBeforeFall: 0n,
  };
}

/** What its minutes are called: as planned, until it was played. */
export function lengthOf({ call }: Item): 'played' | 'planned' {
  return call.standing.is === 'played' ? 'played' : 'planned';
}

/** Held calls count only while the whole is an offer, and then only if nothing has to happen first. */
export function counts(call: Call, offered: boolean): boolean {
  if (call.standing.is === 'held') return offered && call.standing.onlyIf === undefined;
  return call.standing.is !== 'cancelled' || call.standing.wasAgreed;
}

type Fell = Call & { readonly standing: { readonly is: 'cancelled' | 'missed' } };

/** Whether a call was cancelled or missed. */
export function hasFallen(call: Call): call is Fell {
  const { standing } = call;
  return standing.is === 'cancelled' || standing.is === 'missed';
}

/** The income a call earns: at performances somebody listens, at the rest one prepares. */
export function categoryOf(call: Call): Category {
  if (PERFORMANCES.has(call.kind)) return 'performance';
  return call.kind === 'other' ? 'other' : 'rehearsal';
}
