// Time zones by their IANA names, and a check that the runtime knows the changes of 2026.

import { type OrRefusal, Refusal } from '@colla/refusal';
import { Temporal } from 'temporal-polyfill';

/** An IANA time zone name (`Europe/London`) that this runtime knows. Made by `zone`. */
export type Zone = string & { readonly __brand: 'Zone' };

const known = new Map<string, Zone>();

/**
 * Reads a zone name, whatever its capitals; refuses one the runtime does not know, and bare offsets, which
 * forget the clock change.
 */
export function zone(name: string): OrRefusal<Zone> {
  const seen = known.get(name);
  if (seen) return seen;
  const found = /^[A-Za-z]+(?:\/[A-Za-z0-9_+-]+)*$/.test(name) ? asWritten(name) : undefined;
  if (!found) return noSuchZone(name);
  known.set(name, found);
  return found;
}

function asWritten(name: string): Zone | undefined {
  try {
    return Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(name).timeZoneId as Zone;
  } catch {
    return undefined;
  }
}

function noSuchZone(name: string): Refusal {
  return new Refusal(
    'calendar/unknown-zone',
    `“${name}” is not a time zone. Give the place's zone by its name, such as Europe/London or America/Chicago.`,
    { zone: name },
  );
}

/** An instant at which a zone's clocks are known to show an offset from UTC. */
export interface KnownOffset {
  readonly zone: string;
  readonly instant: string;
  readonly offset: string;
}

/**
 * Instants whose offset changed by law in 2026. Source: IANA time zone database, releases 2026a to 2026f, as
 * read in the project's check values (British Columbia, Alberta, Northwest Territories, Manitoba, Cuba, Morocco).
 */
export const CHANGES_OF_2026: readonly KnownOffset[] = [
  { zone: 'America/Vancouver', instant: '2026-12-15T20:00:00Z', offset: '-07:00' },
  { zone: 'America/Edmonton', instant: '2026-12-15T20:00:00Z', offset: '-06:00' },
  { zone: 'America/Inuvik', instant: '2026-12-15T20:00:00Z', offset: '-06:00' },
  { zone: 'America/Winnipeg', instant: '2026-12-15T20:00:00Z', offset: '-05:00' },
  { zone: 'America/Havana', instant: '2026-12-15T20:00:00Z', offset: '-04:00' },
  { zone: 'Africa/Casablanca', instant: '2026-12-15T20:00:00Z', offset: '+00:00' },
];

/** Zones for which this runtime would tell the wrong hour in winter 2026; empty where its zone data is current. */
export function staleZones(changes: readonly KnownOffset[] = CHANGES_OF_2026): string[] {
  return changes
    .filter(
      ({ zone, instant, offset }) =>
        Temporal.Instant.from(instant).toZonedDateTimeISO(zone).offset !== offset,
    )
    .map(({ zone }) => zone);
}

/** One sentence for the console when zone data is out of date; nothing where it is current. */
export function staleZoneWarning(stale: readonly string[] = staleZones()): string | undefined {
  if (stale.length === 0) return undefined;
  return (
    `The time zone data of this runtime is older than the changes of 2026: times in ${stale.join(', ')} ` +
    'may be an hour off. Update Node.js to the newest release of its line before relying on calls there.'
  );
}
