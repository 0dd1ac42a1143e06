// What else the pianist is asked for at the time of a call: a warning, since two rooms at once may be what both agreed.

import { dayNumber, readInstant, type Span, span } from '@colla/calendar';
import { granted, refused } from '@colla/refusal';
import type { CallJson, MarkJson, SeasonJson, SeasonScoreJson } from '@colla/wire';
import { kinds } from '../../catalogue/kinds.ts';
import { dayOf } from '../../local-time.ts';
import { saySpan } from '../../locale.ts';
import { type CallRow, plannedOf } from './call-row.ts';
import { callWord } from './names.ts';

/** A time at which the pianist is wanted, and for what. */
export interface Busy {
  readonly id: string;
  readonly what: string;
  readonly times: Span;
}

/** Those that share a minute with a span. One that ends as the other begins shares none. */
export function clashing({ start, end }: Span, busy: readonly Busy[]): Busy[] {
  const [from, until] = [start.epochMilliseconds, end.epochMilliseconds];
  return busy.filter(
    ({ times }) => times.start.epochMilliseconds < until && from < times.end.epochMilliseconds,
  );
}

/** The season that tells what else is on a day: any that has it, the shortest of them. */
export function seasonOf(day: string, seasons: readonly SeasonJson[]): SeasonJson | undefined {
  const length = ({ from, to }: SeasonJson) => dayNumber(to) - dayNumber(from);
  return seasons
    .filter(({ from, to }) => from <= day && day <= to)
    .sort((one, other) => length(one) - length(other))[0];
}

/** The calls of an engagement itself that stand or were played. */
export function busyWith(calls: readonly CallJson[]): Busy[] {
  return calls
    .filter(({ standing: { is } }) => is !== 'cancelled' && is !== 'missed')
    .map((call) => ({
      id: call.id,
      what: `${callWord(call)}, ${unparted(saySpan(call))}`,
      times: { start: granted(readInstant(call.start)), end: granted(readInstant(call.end)) },
    }));
}

/** The calls of an inquiry that is being written down, as far as their times can be read. */
export function busyAmong(rows: readonly CallRow[]): Busy[] {
  return rows.flatMap((row) => {
    const written = plannedOf(row);
    const times = span(written);
    if (refused(times)) return [];
    const name = row.label.trim() || kinds(row.kind);
    return [{ id: String(row.key), what: `${name}, ${unparted(`${written.from}–${written.until}`)}`, times }];
  });
}

/** No call is longer than two days, and two places differ by one at most. */
const DAYS_NEAR = [-3, -2, -1, 0, 1, 2, 3];

/** The calls of other engagements that stand or were played near a day. */
export function busyNear(
  day: string,
  staves: SeasonScoreJson['staves'],
  engagement: string | undefined,
): Busy[] {
  const days = daysOf(staves);
  return DAYS_NEAR.flatMap((off) => days.get(dayNumber(day) + off) ?? [])
    .filter((mark) => mark.engagement !== engagement)
    .map(({ call, kind, start, end, title }) => ({
      id: call,
      what: `${kinds(kind)}, ${unparted(saySpan({ start, end }))}, “${title}”`,
      times: { start: granted(readInstant(start)), end: granted(readInstant(end)) },
    }));
}

const sorted = new WeakMap<SeasonScoreJson['staves'], Map<number, MarkJson[]>>();

/** The calls of a season that stand, by the day on which they begin; sorted once for all the calls that ask. */
function daysOf(staves: SeasonScoreJson['staves']): Map<number, MarkJson[]> {
  const known = sorted.get(staves);
  if (known) return known;
  const days = new Map<number, MarkJson[]>();
  for (const mark of staves.flatMap(({ marks }) => marks)) {
    if (mark.is === 'cancelled' || mark.is === 'missed') continue;
    const day = dayNumber(dayOf(mark.start));
    days.set(day, [...(days.get(day) ?? []), mark]);
  }
  sorted.set(staves, days);
  return days;
}

/** A span of times that stays together at the end of a line: a dash may otherwise end one. */
function unparted(times: string): string {
  return times.replace('–', '–\u2060');
}
