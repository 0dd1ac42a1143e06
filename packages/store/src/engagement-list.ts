// The list of engagements: one line each, read without loading them whole.

import type { Stage } from '@colla/engagements';
import { eq, sql } from 'drizzle-orm';
import { alias } from 'drizzle-orm/pg-core';
import type { EngagementSummary } from './books.ts';
import { readMoment } from './moments.ts';
import { type List, paging } from './page.ts';
import { present } from './rows.ts';
import { engagements } from './tables/engagements.ts';
import { parties } from './tables/parties.ts';

const soloists = alias(parties, 'soloists');
const institutions = alias(parties, 'institutions');
const summaries: List<EngagementSummary> = {
  name: 'engagements',
  by: 'instant',
  newestFirst: true,
  order: [sql`${engagements.askedAt}`, sql`${engagements.id}`],
  select: sql`${engagements.id}::text, ${engagements.title}, ${engagements.stage},
    ${soloists.name}, ${institutions.name}, ${engagements.callCount}, ${engagements.partsWanted},
    ${engagements.firstAt}::text, ${engagements.firstZone}, ${engagements.lastAt}::text, ${engagements.lastZone}`,
  from: sql`${engagements}
    left join ${parties} ${soloists} on ${eq(soloists.id, engagements.soloistParty)}
    left join ${parties} ${institutions} on ${eq(institutions.id, engagements.institutionParty)}`,
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

type SummaryColumns = [
  string,
  string,
  Stage,
  string | null,
  string | null,
  number,
  number,
  ...(string | null)[],
];

function summary(columns: unknown[]): EngagementSummary {
  const [id, title, stage, soloist, institution, calls, partsWanted, ...moments] = columns as SummaryColumns;
  const [firstAt, firstZone, lastAt, lastZone] = moments;
  const first = firstAt && firstZone ? readMoment(firstAt, firstZone) : null;
  const last = lastAt && lastZone ? readMoment(lastAt, lastZone) : null;
  return { id, title, stage, calls, partsWanted, ...present({ soloist, institution, first, last }) };
}
