// A call: one appointment within an engagement, as planned and as it turned out.

import { minutesOf, type Span, type Temporal, whenOf } from '@colla/calendar';
import { type CallKind, PERFORMANCES } from './kinds.ts';

/** Who let a call fall. */
export type Who = 'payer' | 'pianist';

/** Why, in words the terms can name. Illness and force majeure are reasons the trade treats apart. */
export const REASONS = ['other', 'illness', 'emergency', 'force majeure', 'forgotten'] as const;
export type Reason = (typeof REASONS)[number];

/**
 * How a call stands. `held`: kept free, not agreed; `onlyIf` names what must happen first (a second round).
 * `agreed`: both sides count on it. `played`: with its real times. `cancelled`: word came, at an instant; of a hold
 * it keeps how it was held.
 * `missed`: no word came and somebody was not there.
 */
export type Standing =
  | { readonly is: 'held'; readonly lapsesAt?: Temporal.ZonedDateTime; readonly onlyIf?: string }
  | { readonly is: 'agreed' }
  | { readonly is: 'played'; readonly times: Span }
  | {
      readonly is: 'cancelled';
      readonly at: Temporal.ZonedDateTime;
      readonly by: Who;
      readonly reason: Reason;
      /** Whether the call had been agreed when it fell: a hold released costs nobody anything. */
      readonly wasAgreed: boolean;
      readonly lapsesAt?: Temporal.ZonedDateTime;
      readonly onlyIf?: string;
    }
  | { readonly is: 'missed'; readonly by: Who; readonly reason: Reason };

/** Why the pianist plays a call though what was to be paid first was not, and since when. */
export interface Lifted {
  readonly at: Temporal.ZonedDateTime;
  readonly reason: string;
}

export interface Call {
  readonly id: string;
  readonly kind: CallKind;
  /** What it is called, where the kind does not say enough: “mock jury”, “first round”. Tariffs may name it. */
  readonly label?: string;
  readonly place: string;
  readonly planned: Span;
  readonly standing: Standing;
  /** That nothing has to be paid before it any more. */
  readonly lifted?: Lifted;
}

/** The real times of a played call, the planned ones of any other. */
export function timesOf(call: Call): Span {
  return call.standing.is === 'played' ? call.standing.times : call.planned;
}

/** Minutes planned. */
export function plannedMinutes(call: Call): number {
  return minutesOf(call.planned);
}

/** Minutes as played, or as planned where it was not played. */
export function playedMinutes(call: Call): number {
  return minutesOf(timesOf(call));
}

/** Minutes between the agreed start of a call and its real one; none where it began on time or earlier. */
export function waitedMinutes(call: Call): number {
  return Math.max(0, Math.round((whenOf(timesOf(call)).at - whenOf(call.planned).at) / 60_000));
}

/** Calls in the order they happen; two at one instant in the order of their ids, so that any input order gives the same. */
export function inOrder<C extends Call>(calls: readonly C[]): C[] {
  return [...calls].sort(
    (a, b) => a.planned.start.epochMilliseconds - b.planned.start.epochMilliseconds || (a.id < b.id ? -1 : 1),
  );
}

/** The call an engagement leads up to: its last performance, or its last call where it has none. */
export function principalCall(calls: readonly Call[]): Call | undefined {
  const ordered = inOrder(calls);
  return ordered.findLast((call) => PERFORMANCES.has(call.kind)) ?? ordered.at(-1);
}
