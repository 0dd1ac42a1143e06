// A hold: a call kept free, until when and on what condition; and how it is agreed or falls.

import { Temporal } from '@colla/calendar';
import type { Call, Reason, Who } from '@colla/hours';
import { Refusal } from '@colla/refusal';

/** True for a call of which it is not said yet what becomes of it: held or agreed. */
export function isOpen({ standing }: Call): boolean {
  return standing.is === 'held' || standing.is === 'agreed';
}

/** True for a hold that an agreement takes: nothing must happen first. */
export function isOffered({ standing }: Call): boolean {
  return standing.is === 'held' && standing.onlyIf === undefined;
}

/** What an agreement does to a call: a hold it takes is agreed, any other call stays as it is. */
export function taken(call: Call): Call {
  return isOffered(call) ? { ...call, standing: { is: 'agreed' } } : call;
}

/** True for a hold that nobody took up by the instant it was kept until. */
export function hasLapsed({ standing }: Call, at: Temporal.ZonedDateTime): boolean {
  if (standing.is !== 'held' || standing.lapsesAt === undefined) return false;
  return Temporal.ZonedDateTime.compare(at, standing.lapsesAt) > 0;
}

/** An open call falls, by whose word, when and why. A hold keeps how it was held, so that it can be opened again. */
export function fall(call: Call, word: { at: Temporal.ZonedDateTime; by: Who; reason: Reason }): Call {
  const { is, ...held } = call.standing;
  return { ...call, standing: { ...held, is: 'cancelled', ...word, wasAgreed: is === 'agreed' } };
}

/** Why a hold that has lapsed cannot be agreed. */
export function holdLapsed({ id, kind, standing }: Call): Refusal {
  const until = standing.is === 'held' ? standing.lapsesAt : undefined;
  const day = until?.toPlainDate().toString() ?? '';
  return new Refusal(
    'engagements/hold-lapsed',
    `The ${kind} was kept free until ${day} and no longer. Release it, and enter it again if it is still free.`,
    { call: id, lapsed: day },
  );
}
