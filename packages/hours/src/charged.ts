// From minutes lived to minutes charged: minimum, increment, rounding, grace.

import { type Call, plannedMinutes, playedMinutes } from './call.ts';

/** Which minutes of a call count: as played, as planned, or whichever is longer. */
export type Counted = 'played' | 'planned' | 'longer';

/** How time is made up into what is charged. All figures are minutes. */
export interface Rounding {
  readonly minimum: number;
  /** Charged in steps of this many minutes; 1 charges the exact minute. */
  readonly increment: number;
  readonly round: 'up' | 'nearest' | 'down';
  /** Minutes into a new step that are forgiven before it is begun. */
  readonly grace: number;
}

/** The minutes of a call that count. A call that was not played counts as planned. */
export function countedMinutes(call: Call, counted: Counted): number {
  if (counted === 'planned') return plannedMinutes(call);
  const played = playedMinutes(call);
  return counted === 'longer' ? Math.max(played, plannedMinutes(call)) : played;
}

/** Minutes charged for `minutes`: never less for a longer call, never less than the minimum. */
export function chargedMinutes(minutes: number, { minimum, increment, round, grace }: Rounding): number {
  return Math.max(minimum, steps(minutes, increment, round, grace) * increment);
}

function steps(minutes: number, increment: number, round: Rounding['round'], grace: number): number {
  if (round === 'down') return Math.floor(minutes / increment);
  if (round === 'nearest') return Math.floor(minutes / increment + 0.5);
  return Math.ceil(Math.max(0, minutes - grace) / increment);
}
