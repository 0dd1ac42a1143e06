// Engagements for the rows of rates: all alike in kind, none quite like another.
import { Temporal } from '@colla/calendar';
import type { Call, CallKind, Standing } from '@colla/hours';
import type { Facts } from '@colla/rates';

const KINDS: readonly CallKind[] = ['lesson', 'rehearsal', 'lesson', 'rehearsal', 'exam', 'recital'];
const FIRST = Temporal.ZonedDateTime.from('2026-03-02T09:00[Europe/London]');

/** The instant at which the engagements are looked at: for most of them half the calls are still to come. */
export const now = FIRST.add({ days: 30 });

/** One engagement of so many calls, one in four days; `seed` moves days, lengths and what became of them. */
export function engagement(seed: number, { calls }: { calls: number }): Facts {
  return {
    calls: Array.from({ length: calls }, (_, index) => call(seed, index)),
    programme: [],
    legs: [
      {
        id: 'leg',
        on: FIRST.toPlainDate(),
        from: 'Home',
        to: 'Hall',
        distance: { thousandths: 8000 + (seed % 37) * 500, unit: 'km' },
        minutes: 40,
        purpose: 'call',
      },
    ],
    costs: [{ id: 'score', on: FIRST.toPlainDate(), what: 'Score', amount: BigInt(900 + (seed % 41)) }],
    soloist: { level: 'grade 8', instrument: 'cello' },
    sharers: 1,
    pianistClass: seed % 3 === 0 ? 'student' : 'professional',
    circumstances: [],
    offered: false,
    holidays: new Set(['2026-04-03', '2026-04-06']),
  };
}

function call(seed: number, index: number): Call {
  const start = FIRST.add({ days: (seed % 29) + index * 4, minutes: ((seed * 7 + index) % 24) * 15 });
  const end = start.add({ minutes: 30 + ((seed + index * 5) % 8) * 10 });
  return {
    id: `c${index}`,
    kind: KINDS[index % KINDS.length] ?? 'rehearsal',
    place: 'Hall',
    planned: { start, end },
    standing: standing(seed, index, { start, end }),
  };
}

function standing(seed: number, index: number, planned: Call['planned']): Standing {
  if (planned.start.epochMilliseconds > now.epochMilliseconds) return { is: 'agreed' };
  if ((seed + index) % 11 > 0)
    return { is: 'played', times: { ...planned, end: planned.end.add({ minutes: (seed + index) % 20 }) } };
  const at = planned.start.subtract({ minutes: 600 + ((seed * 13) % 60) * 60 });
  return { is: 'cancelled', at, by: 'payer', reason: 'other', wasAgreed: true };
}
