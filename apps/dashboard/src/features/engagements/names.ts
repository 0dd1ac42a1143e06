// How calls, their standing and the people of an engagement are named on the screen.

import type { Reason } from '@colla/hours';
import type { CallJson, EngagementWholeJson } from '@colla/wire';
import { headWord, engagements as say } from '../../catalogue/engagements.ts';
import { kinds } from '../../catalogue/kinds.ts';
import { sayDay, saySpan } from '../../locale.ts';

/** “Rehearsal, Tue 3 Mar”; by its label where it has one. */
export function callName({ kind, label, start }: Pick<CallJson, 'kind' | 'label' | 'start'>): string {
  return `${callWord({ kind, label })}, ${sayDay(start, 'weekday')}`;
}

/** Its label, or its kind where it has none. */
export function callWord({ kind, label }: Pick<CallJson, 'kind' | 'label'>): string {
  return label === undefined ? kinds(kind) : headWord(label);
}

/** Names by id, for the lines of a statement. */
export function callNames(calls: readonly CallJson[]): Record<string, string> {
  return Object.fromEntries(calls.map((call) => [call.id, callName(call)]));
}

/** Who pays, by role. */
export function payerNames({ payers, parties }: EngagementWholeJson): Record<string, string> {
  return Object.fromEntries(
    Object.entries(payers).flatMap(([role, id]) => {
      const name = parties[id];
      return name === undefined ? [] : [[role, name]];
    }),
  );
}

/** How a call stands, in words. */
export function sayStanding({ standing }: Pick<CallJson, 'standing'>): string {
  switch (standing.is) {
    case 'held':
      return sayHold(standing);
    case 'cancelled':
      return say('call_cancelled', { who: standing.by, reason: sayReason(standing.reason).toLowerCase() });
    case 'missed':
      return say('call_missed', { who: standing.by, reason: sayReason(standing.reason).toLowerCase() });
    default:
      return say(`call_${standing.is}`);
  }
}

function sayHold({
  onlyIf,
  lapsesAt,
}: {
  onlyIf?: string | undefined;
  lapsesAt?: string | undefined;
}): string {
  const condition = onlyIf ?? '';
  if (lapsesAt === undefined) return onlyIf === undefined ? say('held') : say('heldIf', { condition });
  const day = sayDay(lapsesAt, 'weekday');
  return onlyIf === undefined ? say('heldUntil', { day }) : say('heldUntilIf', { day, condition });
}

/** The times it took; where it was played otherwise than planned, those planned too. */
export function timesOf({ start, end, standing }: CallJson): { taken: string; planned?: string } {
  const planned = saySpan({ start, end });
  if (standing.is !== 'played') return { taken: planned };
  const taken = saySpan(standing);
  return taken === planned ? { taken } : { taken, planned };
}

export function sayReason(reason: Reason): string {
  return say(reason === 'force majeure' ? 'reason_forceMajeure' : `reason_${reason}`);
}
