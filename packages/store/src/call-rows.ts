// A call as a row and back: its planned times, and how it stands.

import type { Span, Zone } from '@colla/calendar';
import { type Call, type Standing, timesOf } from '@colla/hours';
import { moment, momentIf, zoneOf } from './moments.ts';
import { type NewRow, present, type Row } from './rows.ts';
import type { calls } from './tables/calls.ts';

type OfEngagement = 'engagementId' | 'position';

/** The row that a call comes to, but for whose it is and its place in the order. */
export function callRow(call: Call): Omit<NewRow<typeof calls>, OfEngagement> {
  const { id, kind, label, place, planned, lifted } = call;
  return {
    ...{ id, kind, place },
    label: label ?? null,
    startsAt: planned.start.toInstant(),
    endsAt: planned.end.toInstant(),
    zone: sameZone(planned),
    on: timesOf(call).start.toPlainDate(),
    ...standingRow(call.standing),
    ...(lifted
      ? { liftedAt: lifted.at.toInstant(), liftedZone: zoneOf(lifted.at), liftedReason: lifted.reason }
      : {}),
  };
}

function standingRow(
  standing: Standing,
): Pick<NewRow<typeof calls>, 'standing'> & Partial<NewRow<typeof calls>> {
  switch (standing.is) {
    case 'agreed':
      return { standing: 'agreed' };
    case 'held':
      return { standing: 'held', ...holdRow(standing) };
    case 'played': {
      const { start, end } = standing.times;
      return {
        standing: 'played',
        playedFrom: start.toInstant(),
        playedUntil: end.toInstant(),
        playedZone: sameZone(standing.times),
      };
    }
    case 'cancelled': {
      const { at, by, reason, wasAgreed } = standing;
      const word = { wordAt: at.toInstant(), wordZone: zoneOf(at), by, reason, wasAgreed };
      return { standing: 'cancelled', ...word, ...holdRow(standing) };
    }
    case 'missed':
      return { standing: 'missed', by: standing.by, reason: standing.reason };
  }
}

function holdRow({ lapsesAt, onlyIf }: Pick<Extract<Standing, { is: 'held' }>, 'lapsesAt' | 'onlyIf'>) {
  return {
    onlyIf: onlyIf ?? null,
    ...(lapsesAt ? { lapsesAt: lapsesAt.toInstant(), lapsesZone: zoneOf(lapsesAt) } : {}),
  };
}

/** The zone of a span: that of its one place. A span between two places is a broken invariant. */
export function sameZone({ start, end }: Span): Zone {
  if (start.timeZoneId !== end.timeZoneId) throw new Error('a call begins and ends in two zones');
  return zoneOf(start);
}

/** The call that a row comes to. */
export function callOf(row: Row<typeof calls>): Call {
  const { id, kind, label, place, startsAt, endsAt, zone, liftedReason: reason } = row;
  const liftedAt = momentIf(row.liftedAt, row.liftedZone);
  return {
    ...present({ id, kind, label, place }),
    planned: { start: moment(startsAt, zone), end: moment(endsAt, zone) },
    standing: standingOf(row),
    ...(liftedAt && reason !== null ? { lifted: { at: liftedAt, reason } } : {}),
  };
}

function standingOf(row: Row<typeof calls>): Standing {
  const { standing, onlyIf, by, reason, wasAgreed } = row;
  const at = momentIf(row.wordAt, row.wordZone);
  const start = momentIf(row.playedFrom, row.playedZone);
  const end = momentIf(row.playedUntil, row.playedZone);
  const lapsesAt = momentIf(row.lapsesAt, row.lapsesZone);
  if (standing === 'agreed') return { is: 'agreed' };
  const held = present({ lapsesAt: lapsesAt ?? null, onlyIf });
  if (standing === 'held') return { is: 'held', ...held };
  if (standing === 'played' && start && end) return { is: 'played', times: { start, end } };
  if (standing === 'missed' && by && reason) return { is: 'missed', by, reason };
  if (standing === 'cancelled' && at && by && reason && wasAgreed !== null) {
    return { is: 'cancelled', at, by, reason, wasAgreed, ...held };
  }
  throw new Error(`call ${row.id} stands as ${standing} without what belongs to that`);
}
