// A call gets another time, place, kind or name. Where it was agreed and somebody wished it, the move is kept: what
// moving costs depends on whose wish it was and when word of it came.

import { type Span, Temporal } from '@colla/calendar';
import type { Call, CallKind, Who } from '@colla/hours';
import type { Move } from '@colla/rates';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import { withCall } from './calls.ts';
import { type Engagement, hasAgreement, isBefore, wordTooEarly } from './engagement.ts';

/** What becomes of a call; what is left out stays as it is, `null` takes it away. */
export interface CallChange {
  readonly kind?: CallKind;
  readonly label?: string | null;
  readonly place?: string;
  readonly planned?: Span;
  /** Until when it is kept free. */
  readonly lapsesAt?: Temporal.ZonedDateTime | null;
}

/** Whose wish it was that a call moves, and when word of it came. */
interface Word {
  readonly at: Temporal.ZonedDateTime;
  readonly by: Who;
}

/**
 * Another time, place, kind or name for a call that has not taken place, or another day until which it is kept free.
 * By a `word`, an agreed call moves and the move is kept; without one its times are only put right, and put back
 * where they stood before the last move, they take that move back. Refuses a word for a call that does not move, one
 * from before the agreement, and one that comes once the call has begun; and an agreed call to be kept free.
 */
export function changeCall(
  engagement: Engagement,
  id: string,
  to: CallChange,
  word?: Word,
): OrRefusal<Engagement> {
  const before = engagement.calls.find((call) => call.id === id);
  const changed =
    to.lapsesAt === undefined
      ? withCall(engagement, id, ['held', 'agreed'], 'moved', (call) => changedTo(call, to))
      : withCall(engagement, id, ['held'], 'kept free until a day', (call) => changedTo(call, to));
  if (refused(changed) || !before) return changed;
  const moves = word ? movedBy(word, engagement, before, to) : withoutSlip(engagement, before, to);
  return refused(moves) ? moves.at('/moved') : { ...changed, moves };
}

function changedTo({ label, standing, ...call }: Call, to: CallChange): Call {
  const { kind = call.kind, place = call.place, planned = call.planned } = to;
  const named = to.label === undefined ? label : to.label;
  return {
    ...call,
    ...{ kind, place, planned },
    ...(named === null || named === undefined ? {} : { label: named }),
    standing: keptUntil(standing, to.lapsesAt),
  };
}

function keptUntil(standing: Call['standing'], to: CallChange['lapsesAt']): Call['standing'] {
  if (standing.is !== 'held' || to === undefined) return standing;
  const { lapsesAt: _, ...held } = standing;
  return to === null ? held : { ...held, lapsesAt: to };
}

/** The moves with this one, where there is one to be kept. */
function movedBy(
  word: Word,
  engagement: Engagement,
  { id, kind, planned, standing }: Call,
  to: CallChange,
): OrRefusal<readonly Move[]> {
  if (!hasAgreement(engagement) || standing.is !== 'agreed' || !to.planned || isSame(planned, to.planned))
    return nothingMoves(kind);
  if (isBefore(word.at, engagement.agreement)) return wordTooEarly(engagement.agreement);
  if (Temporal.ZonedDateTime.compare(word.at, planned.start) >= 0) return movedTooLate(kind);
  return [...engagement.moves, { call: id, was: planned, ...word }];
}

/** The moves without the last one of a call that is put back where it stood before that move. */
function withoutSlip({ moves }: Engagement, { id }: Call, { planned }: CallChange): readonly Move[] {
  const last = moves.findLast(({ call }) => call === id);
  return last && planned && isSame(last.was, planned) ? moves.filter((move) => move !== last) : moves;
}

function isSame(one: Span, other: Span): boolean {
  return one.start.equals(other.start) && one.end.equals(other.end);
}

function nothingMoves(kind: CallKind): Refusal {
  return new Refusal(
    'engagements/nothing-moves',
    `The ${kind} keeps its agreed times, or was never agreed, so nobody moves it. Leave out whose wish it was, or give it another time.`,
    {},
  );
}

function movedTooLate(kind: CallKind): Refusal {
  return new Refusal(
    'engagements/moved-too-late',
    `Word came after the ${kind} was to begin. Mark it missed, and enter another call.`,
    {},
    '/on',
  );
}
