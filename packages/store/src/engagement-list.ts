// The list of engagements: one line each, read without loading them whole.

import type { Stage } from '@colla/engagements';
import type { CallKind } from '@colla/hours';
import { eq, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/pg-core';
import type { EngagementSummary } from './books.ts';
import { readMomentIf } from './moments.ts';
import { type List, paging } from './page.ts';
import { present } from './rows.ts';
import { calls } from './tables/calls.ts';
import { engagements } from './tables/engagements.ts';
import { parties } from './tables/parties.ts';

const soloists = alias(parties, 'soloists');
const institutions = alias(parties, 'institutions');

/** The next call after `now`, looked up for the lines of a page alone. What has ended has nothing ahead of it. */
const coming = sql`left join lateral (
    select ${calls.kind}, ${calls.label}, ${calls.startsAt}, ${calls.zone} from ${calls}
    where ${eq(calls.engagementId, engagements.id)} and ${calls.standing} in ('held', 'agreed')
      and ${calls.startsAt} > ${sql.placeholder('now')}::text::timestamptz
    order by ${calls.startsAt}, ${calls.id} limit 1
  ) coming on ${engagements.endedAt} is null`;

const summaries: List<EngagementSummary> = {
  name: 'engagements',
  by: 'instant',
  newestFirst: true,
  order: [sql`${engagements.askedAt}`, sql`${engagements.id}`],
  select: sql`${engagements.id}::text, ${engagements.title}, ${engagements.stage},
    ${soloists.name}, ${institutions.name}, ${engagements.callCount}, ${engagements.partsWanted},
    ${engagements.firstAt}::text, ${engagements.firstZone}, ${engagements.lastAt}::text, ${engagements.lastZone},
    coming.kind, coming.label, coming.starts_at::text, coming.zone`,
  from: sql`${engagements}
    left join ${parties} ${soloists} on ${eq(soloists.id, engagements.soloistParty)}
    left join ${parties} ${institutions} on ${eq(institutions.id, engagements.institutionParty)}
    ${coming}`,
  read: summary,
};
/** All of them, the newest inquiry first. */
export const newestFirst = paging(summaries);
/** Those of one `stage`, the newest inquiry first. */
export const ofStage = paging({
  ...summaries,
  name: 'engagements of a stage',
  where: eq(engagements.stage, sql.placeholder('stage')),
});

type Words = string | null;
type SummaryColumns = [
  ...[id: string, title: string, stage: Stage, soloist: Words, institution: Words],
  ...[calls: number, partsWanted: number],
  ...[firstAt: Words, firstZone: Words, lastAt: Words, lastZone: Words],
  ...[kind: CallKind | null, label: Words, startsAt: Words, zone: Words],
];

function summary(columns: unknown[]): EngagementSummary {
  const [id, title, stage, soloist, institution, calls, partsWanted, ...times] = columns as SummaryColumns;
  const [firstAt, firstZone, lastAt, lastZone, kind, label, startsAt, zone] = times;
  const first = readMomentIf(firstAt, firstZone);
  const last = readMomentIf(lastAt, lastZone);
  const start = readMomentIf(startsAt, zone);
  const next = kind && start ? { kind, start, ...present({ label }) } : null;
  return { id, title, stage, calls, partsWanted, ...present({ soloist, institution, first, last, next }) };
}
