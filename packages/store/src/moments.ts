// An instant and the zone of its place: two columns in the books, one value in the domain.

import { Temporal, type Zone } from '@colla/calendar';

/** The instant as the clocks of its place showed it. */
export function moment(at: Temporal.Instant, zone: Zone): Temporal.ZonedDateTime {
  return at.toZonedDateTimeISO(zone);
}

/** The same where there may be none. */
export function momentIf(at: Temporal.Instant | null, zone: Zone | null): Temporal.ZonedDateTime | undefined {
  return at && zone ? moment(at, zone) : undefined;
}

/** The zone of a moment; every moment's zone was read by `zone` when it was made. */
export function zoneOf(moment: Temporal.ZonedDateTime): Zone {
  return moment.timeZoneId as Zone;
}

/** The same from PostgreSQL's own text. */
export function readMomentIf(at: string | null, zone: string | null): Temporal.ZonedDateTime | null {
  return at && zone ? Temporal.Instant.from(at).toZonedDateTimeISO(zone) : null;
}
