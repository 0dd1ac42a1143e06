// Time zones by their IANA names, and a check that the runtime knows the changes of 2026.

import { type OrRefusal, Refusal } from '@colla/refusal';
import { Temporal } from 'temporal-polyfill';

/** An IANA time zone name (`Europe/London`) that this runtime knows. Made by `zone`. */
export type Zone = string & { readonly __brand: 'Zone' };

const known = new Map<string, Zone>();

/** Reads a zone name; refuses one the runtime does not know, and bare offsets, which forget the clock change. */
export function zone(name: string): OrRefusal<Zone> {
  const seen = known.get(name);
  if (seen) return seen;
  if (!/^[A-Za-z]+(?:\/[A-Za-z0-9_+-]+)*$/.test(name) || !isKnown(name)) return noSuchZone(name);
  known.set(name, name as Zone);
  return name as Zone;
}

function isKnown(name: string): boolean {
  try {
    Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(name);
    return true;
  } catch {
    return false;
  }
}

function noSuchZone(name: string): Refusal {
  return new Refusal(
    'calendar/unknown-zone',
    `“${name}” is not a time zone. Give the place's zone by its name, such as Europe/London or America/Chicago.`,
    { zone: name },
  );
}

/**
 * Instants whose offset changed by law in 2026. Source: IANA time zone database, releases 2026a to 2026f, as
 * read in the project's check values (British Columbia, Alberta, Northwest Territories, Manitoba, Morocco).
 */
export const CHANGES_OF_2026 = [
  { zone: 'America/Vancouver', instant: '2026-12-15T20:00:00Z', offset: '-07:00' },
  { zone: 'America/Edmonton', instant: '2026-12-15T20:00:00Z', offset: '-06:00' },
  { zone: 'America/Inuvik', instant: '2026-12-15T20:00:00Z', offset: '-06:00' },
  { zone: 'America/Winnipeg', instant: '2026-12-15T20:00:00Z', offset: '-05:00' },
  { zone: 'Africa/Casablanca', instant: '2026-12-15T20:00:00Z', offset: '+00:00' },
] as const;

/** Zones for which this runtime would tell the wrong hour in winter 2026; empty where its zone data is current. */
export function staleZones(): string[] {
  return CHANGES_OF_2026.filter(
    ({ zone, instant, offset }) => Temporal.Instant.from(instant).toZonedDateTimeISO(zone).offset !== offset,
  ).map((change) => change.zone);
}

/** One sentence for the console when zone data is out of date; nothing where it is current. */
export function staleZoneWarning(): string | undefined {
  const stale = staleZones();
  if (stale.length === 0) return undefined;
  return (
    `The time zone data of this runtime is older than the changes of 2026: times in ${stale.join(', ')} ` +
    'may be an hour off. Update Node.js to the newest release of its line before relying on calls there.'
  );
}
