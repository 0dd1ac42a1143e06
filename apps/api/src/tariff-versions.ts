// Which version of a tariff is meant, and which may come next.

import { Temporal } from '@colla/calendar';
import type { Engagement } from '@colla/engagements';
import { inOrder } from '@colla/hours';
import { type Tariff, versionInForce } from '@colla/rates';
import { type OrRefusal, Refusal } from '@colla/refusal';

/** At least one, oldest first. */
type Versions = readonly [Tariff, ...Tariff[]];

/**
 * The version asked for by its number; without one, the version in force on the day of the first call. Refuses a
 * number that is none, and a tariff whose first version begins after that day.
 */
export function versionFor(
  versions: Versions,
  engagement: Pick<Engagement, 'calls'>,
  number: number | undefined,
): OrRefusal<Tariff> {
  const newest = versions.at(-1) ?? versions[0];
  if (number !== undefined) {
    return versions.find(({ version }) => version === number) ?? noSuchVersion(newest, number);
  }
  return versionInForce(versions, engagement.calls) ?? notYetBegun(versions[0], engagement);
}

/**
 * Whether `next` may follow: it begins no earlier than the version before it, and keeps its currency. One that begins on
 * the same day stands in the other's place from then on: so a slip is mended, and no version is ever altered.
 */
export function mayFollow(versions: Versions, next: Tariff): OrRefusal<Tariff> {
  const newest = versions.at(-1) ?? versions[0];
  if (Temporal.PlainDate.compare(next.from, newest.from) < 0) return beginsTooEarly(newest);
  return next.currency === newest.currency ? next : otherCurrency(newest);
}

function noSuchVersion({ name, version }: Tariff, asked: number): Refusal {
  return new Refusal(
    'tariffs/no-such-version',
    `“${name}” has no version ${asked}; its newest is ${version}. Choose one of its versions.`,
    { version: asked, newest: version },
    '/version',
  );
}

function notYetBegun({ name, from }: Tariff, { calls }: Pick<Engagement, 'calls'>): Refusal {
  const day = inOrder(calls)[0]?.planned.start.toPlainDate().toString() ?? '';
  return new Refusal(
    'tariffs/not-yet-begun',
    `“${name}” begins on ${from}, after the first call on ${day}. Name the version to quote by it all the same, or choose another tariff.`,
    { from: from.toString(), firstCall: day },
    '/version',
  );
}

function beginsTooEarly({ version, from }: Tariff): Refusal {
  return new Refusal(
    'tariffs/begins-too-early',
    `Version ${version} begins on ${from}, and the next cannot begin before that day. Let it begin on it or later.`,
    { version, from: from.toString() },
    '/from',
  );
}

function otherCurrency({ currency }: Tariff): Refusal {
  return new Refusal(
    'tariffs/other-currency',
    `This tariff is in ${currency}, and so are all its versions. Enter a new tariff for another currency.`,
    { currency },
    '/currency',
  );
}
