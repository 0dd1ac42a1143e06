// What happens to the calls of an engagement: asked for, agreed, played, cancelled, missed.

import { type Span, Temporal } from '@colla/calendar';
import type { Call, Reason, Standing, Who } from '@colla/hours';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import {
  type Agreed,
  allowed,
  type Engagement,
  factsBehind,
  hasAgreement,
  type Inquiry,
  isBefore,
  type Quoted,
  wordTooEarly,
} from './engagement.ts';
import { fall, hasLapsed, holdLapsed } from './hold.ts';

/**
 * Adds a call, kept free until it is agreed. A quote is taken back by it, as by every change of the calls: it was
 * made for others. Refuses where nothing can change any more.
 */
export function addCall(
  engagement: Engagement,
  call: Omit<Call, 'standing'> & { held?: { lapsesAt?: Temporal.ZonedDateTime; onlyIf?: string } },
): OrRefusal<Engagement> {
  const open = allowed(engagement, 'change', 'inquiry', 'quoted', 'agreed');
  if (refused(open)) return open;
  const { held, ...facts } = call;
  return withCalls(open, [...open.calls, { ...facts, standing: { is: 'held', ...held } }]);
}

/** Takes out a call that was only kept free. */
export function releaseCall(engagement: Engagement, id: string): OrRefusal<Engagement> {
  const open = withCall(engagement, id, ['held'], 'released', (call) => call);
  return refused(open) ? open : { ...open, calls: open.calls.filter((call) => call.id !== id) };
}

/**
 * A call kept free is agreed: a second round is reached, a rehearsal is added by both. Refuses a hold that has
 * lapsed by `now`.
 */
export function agreeCall(
  engagement: Engagement,
  id: string,
  now: Temporal.ZonedDateTime,
): OrRefusal<Engagement> {
  const agreed = allowed(engagement, 'change', 'agreed');
  if (refused(agreed)) return agreed;
  return withCall(agreed, id, ['held'], 'agreed', (call) =>
    hasLapsed(call, now) ? holdLapsed(call) : stand(call, { is: 'agreed' }),
  );
}

/**
 * A call took place, with its real times. A mistake in them is mended by saying it again. Refuses times that begin
 * after `now`, and times more than a week from the plan; a call brought forward may be played before its planned time.
 */
export function playCall(
  engagement: Engagement,
  id: string,
  times: Span,
  now: Temporal.ZonedDateTime,
): OrRefusal<Engagement> {
  return withCall(engagement, id, ['agreed', 'played'], 'played', (call) =>
    isAhead(times.start, now)
      ? notYet(call, { start: times.start, now, verb: 'played' }).at('/from')
      : isNear(times.start, call.planned.start)
        ? stand(call, { is: 'played', times })
        : elsewhen(call, times.start),
  );
}

/** How far a call is played from its plan without being another one. */
const DAYS_NEAR = 7;

function isNear(one: Temporal.ZonedDateTime, other: Temporal.ZonedDateTime): boolean {
  return Math.abs(one.epochMilliseconds - other.epochMilliseconds) <= DAYS_NEAR * 86_400_000;
}

function elsewhen({ id, kind, planned }: Call, start: Temporal.ZonedDateTime): Refusal {
  const [day, plan] = [start.toPlainDate().toString(), planned.start.toPlainDate().toString()];
  return new Refusal(
    'engagements/played-elsewhen',
    `The ${kind} was planned on ${plan}, and ${day} is more than a week from it. Move the call first, or correct the day.`,
    { call: id, day, planned: plan },
    '/on',
  );
}

/**
 * Word came that a call will not take place. Refuses word that comes once the call has begun: that is a call missed;
 * and word from before the agreement.
 */
export function cancelCall(
  engagement: Engagement,
  id: string,
  word: { at: Temporal.ZonedDateTime; by: Who; reason: Reason },
): OrRefusal<Engagement> {
  const call = engagement.calls.find((call) => call.id === id);
  if (hasAgreement(engagement) && isBefore(word.at, engagement.agreement))
    return wordTooEarly(engagement.agreement);
  if (call && Temporal.ZonedDateTime.compare(word.at, call.planned.start) >= 0) {
    return new Refusal(
      'engagements/cancelled-too-late',
      'Word came after the call was to begin. Mark it missed instead.',
      { call: id },
      '/at',
    );
  }
  return withCall(engagement, id, ['held', 'agreed'], 'cancelled', (call) => fall(call, word));
}

/** No word came and somebody was not there. Refuses a call that begins after `now`: word of it can still come. */
export function missCall(
  engagement: Engagement,
  id: string,
  word: { by: Who; reason: Reason },
  now: Temporal.ZonedDateTime,
): OrRefusal<Engagement> {
  return withCall(engagement, id, ['agreed'], 'missed', (call) =>
    isAhead(call.planned.start, now)
      ? notYet(call, { start: call.planned.start, now, verb: 'missed' })
      : stand(call, { is: 'missed', ...word }),
  );
}

/** Takes back what was said of a call: it stands agreed again, or kept free as it was where it was never agreed. */
export function reopenCall(engagement: Engagement, id: string): OrRefusal<Engagement> {
  return withCall(engagement, id, ['played', 'cancelled', 'missed'], 'opened again', (call) =>
    stand(call, before(call.standing)),
  );
}

/**
 * The pianist plays a call though what was to be paid first was not, and says why. Refuses a call that is not agreed.
 */
export function liftBlock(
  engagement: Engagement,
  id: string,
  lifted: { at: Temporal.ZonedDateTime; reason: string },
): OrRefusal<Engagement> {
  return withCall(engagement, id, ['agreed'], 'freed of its block', (call) => ({ ...call, lifted }));
}

function before(standing: Standing): Standing {
  if (standing.is !== 'cancelled' || standing.wasAgreed) return { is: 'agreed' };
  const { lapsesAt, onlyIf } = standing;
  return { is: 'held', ...(lapsesAt ? { lapsesAt } : {}), ...(onlyIf === undefined ? {} : { onlyIf }) };
}

function stand(call: Call, standing: Standing): Call {
  return { ...call, standing };
}

/** Whether something begins after `now`. */
function isAhead(start: Temporal.ZonedDateTime, now: Temporal.ZonedDateTime): boolean {
  return Temporal.ZonedDateTime.compare(start, now) > 0;
}

/** Said by the clock of the place; the year only where it is not this one, which goes without saying. */
function notYet(
  call: Call,
  { start, now, verb }: { start: Temporal.ZonedDateTime; now: Temporal.ZonedDateTime; verb: string },
): Refusal {
  const year = start.year === now.year ? {} : ({ year: 'numeric' } as const);
  const day = start.toPlainDate().toLocaleString('en-GB', { day: 'numeric', month: 'long', ...year });
  const clock = start.toPlainTime().toString({ smallestUnit: 'minute' });
  return new Refusal(
    'engagements/not-yet',
    `The ${call.kind} begins on ${day} at ${clock}. Mark it ${verb} once it has begun.`,
    { call: call.id, begins: start.toString() },
  );
}

/** Changes one call that stands as the move needs it; calls only move once the engagement is open to change. */
export function withCall(
  engagement: Engagement,
  id: string,
  from: readonly Standing['is'][],
  verb: string,
  change: (call: Call) => OrRefusal<Call>,
): OrRefusal<Engagement> {
  const open = allowed(engagement, 'change', 'inquiry', 'quoted', 'agreed');
  if (refused(open)) return open;
  const call = open.calls.find((call) => call.id === id);
  if (!call)
    return new Refusal(
      'engagements/no-such-call',
      'There is no such call in this engagement. Load it again: it may have been released.',
      { call: id },
    );
  if (!from.includes(call.standing.is)) {
    return new Refusal(
      'engagements/illegal-move',
      `The ${call.kind} is ${call.standing.is} and cannot be ${verb}: that takes one that is ${from.join(' or ')}.`,
      {
        call: id,
        standing: call.standing.is,
      },
    );
  }
  const changed = change(call);
  if (refused(changed)) return changed;
  return withCalls(
    open,
    open.calls.map((other) => (other.id === id ? changed : other)),
  );
}

/** A quote was made for the calls as they were, so it is taken back: the engagement is an inquiry again. */
function withCalls(open: Inquiry | Quoted | Agreed, calls: readonly Call[]): Engagement {
  return open.stage === 'quoted' ? { ...factsBehind(open), stage: 'inquiry', calls } : { ...open, calls };
}
