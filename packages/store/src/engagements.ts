// Engagements: loaded whole by one statement, saved by what changed.

import type { Engagement, Stage } from '@colla/engagements';
import { Refusal } from '@colla/refusal';
import { and, eq, sql } from 'drizzle-orm';
import { alias, type PgColumn, type PgTable } from 'drizzle-orm/pg-core';
import type { Books, EngagementSummary } from './books.ts';
import { type EngagementRows, engagementOf, type NewEngagementRows, rowsOf } from './engagement-rows.ts';
import { readMoment } from './moments.ts';
import { isId, type List, paging } from './page.ts';
import { Refused } from './refused.ts';
import {
  adding,
  type NewRow,
  packed,
  packedRows,
  packRow,
  present,
  saving,
  unpack,
  unpackRows,
} from './rows.ts';
import { type Statement, statement } from './statement.ts';
import { agreements, calls, costs, engagements, legs, parties, payers, works } from './tables/index.ts';
import type { Transaction } from './transaction.ts';

const own = (table: PgTable, engagementId: PgColumn, order: PgColumn) =>
  packedRows(table, eq(engagementId, engagements.id), sql`${order}`);
const whole = sql`${packed(engagements)},
  ${own(payers, payers.engagementId, payers.position)},
  ${own(calls, calls.engagementId, calls.position)},
  ${own(works, works.engagementId, works.position)},
  ${own(legs, legs.engagementId, legs.position)},
  ${own(costs, costs.engagementId, costs.position)},
  ${own(agreements, agreements.engagementId, agreements.id)}`;

const byId = statement(
  sql`select ${whole} from ${engagements} where ${eq(engagements.id, sql.placeholder('id'))}`,
);
const between = statement(sql`select ${whole} from ${engagements} where ${engagements.id} in (
    select ${calls.engagementId} from ${calls} where ${calls.on}
      between ${sql.placeholder('from')}::text::date and ${sql.placeholder('to')}::text::date)
  order by ${engagements.askedAt}, ${engagements.id}`);
const lock = statement(
  sql`select 1 from ${engagements} where ${eq(engagements.id, sql.placeholder('id'))} for update`,
);

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
const newestFirst = paging(summaries);
const ofStage = paging({
  ...summaries,
  name: 'engagements of a stage',
  where: eq(engagements.stage, sql.placeholder('stage')),
});

const save = saving(engagements, sql`where ${engagements.revision} = excluded.revision - 1`);
const freeze = adding(agreements);

export function engagementBooks(
  transaction: Transaction,
): Pick<Books, 'engagement' | 'lockEngagement' | 'engagements' | 'engagementsBetween' | 'saveEngagement'> {
  // What this transaction knows to be in the books: a save writes what differs from it.
  const kept = new Map<string, NewEngagementRows>();
  const read = (columns: unknown[]) => {
    const rows = readRows(columns);
    kept.set(rows.engagement.id, rows);
    return engagementOf(rows);
  };
  const load = async (id: string) => {
    const [columns] = isId(id) ? await byId(transaction, { id }) : [];
    return columns && read(columns);
  };
  return {
    engagement: load,
    async lockEngagement(id) {
      if (!isId(id)) return undefined;
      const [, engagement] = await Promise.all([lock(transaction, { id }), load(id)]);
      return engagement;
    },
    engagements: ({ stage, ...page }) =>
      stage ? ofStage(transaction, page, { stage }) : newestFirst(transaction, page),
    async engagementsBetween(from, to) {
      const found = await between(transaction, { from: from.toString(), to: to.toString() });
      return found.map(read);
    },
    async saveEngagement(engagement) {
      if (!kept.has(engagement.id)) await load(engagement.id);
      const before = kept.get(engagement.id);
      const after = rowsOf(engagement, (before?.engagement.revision ?? 0) + 1);
      await write(transaction, engagement, before, after);
      kept.set(engagement.id, after);
    },
  };
}

function readRows([engagement, ...parts]: unknown[]): EngagementRows {
  const [ofPayers, ofCalls, ofWorks, ofLegs, ofCosts, ofAgreements] = parts;
  return {
    engagement: unpack(engagements, engagement),
    payers: unpackRows(payers, ofPayers),
    calls: unpackRows(calls, ofCalls),
    works: unpackRows(works, ofWorks),
    legs: unpackRows(legs, ofLegs),
    costs: unpackRows(costs, ofCosts),
    agreements: unpackRows(agreements, ofAgreements),
  };
}

async function write(
  transaction: Transaction,
  { id, title }: Engagement,
  before: NewEngagementRows | undefined,
  after: NewEngagementRows,
): Promise<void> {
  const [saved] = await Promise.all([
    save(transaction, [after.engagement]),
    replacePayers(transaction, id, before?.payers ?? [], after.payers),
    replaceCalls(transaction, id, before?.calls ?? [], after.calls),
    replaceWorks(transaction, id, before?.works ?? [], after.works),
    replaceLegs(transaction, id, before?.legs ?? [], after.legs),
    replaceCosts(transaction, id, before?.costs ?? [], after.costs),
    freeze(
      transaction,
      after.agreements.filter((agreement) => !before?.agreements.some(({ id }) => id === agreement.id)),
    ),
  ]);
  if (saved === 0) throw changedMeanwhile(title);
}

const replacePayers = replacing(payers, payers.engagementId, payers.role, ({ role }) => role);
const replaceCalls = replacing(calls, calls.engagementId, calls.id, ({ id }) => id);
const replaceWorks = replacing(works, works.engagementId, works.id, ({ id }) => id);
const replaceLegs = replacing(legs, legs.engagementId, legs.id, ({ id }) => id);
const replaceCosts = replacing(costs, costs.engagementId, costs.id, ({ id }) => id);

type Replace<Table extends PgTable> = (
  transaction: Transaction,
  engagement: string,
  before: readonly NewRow<Table>[],
  after: readonly NewRow<Table>[],
) => Promise<unknown>;

/** Brings the rows of one engagement from what they were to what they are, touching only those that differ. */
function replacing<Table extends PgTable>(
  table: Table,
  engagementId: PgColumn,
  key: PgColumn,
  keyOf: (row: NewRow<Table>) => string,
): Replace<Table> {
  const saveRows = saving(table);
  const remove: Statement = statement(
    sql`delete from ${table} where ${and(
      eq(engagementId, sql.placeholder('engagement')),
      sql`${key}::text in (select json_array_elements_text(${sql.placeholder('keys')}::text::json))`,
    )}`,
  );
  return (transaction, engagement, before, after) => {
    const written = (row: NewRow<Table>) => JSON.stringify(packRow(table, row));
    const was = new Map(before.map((row) => [keyOf(row), written(row)]));
    const changed = after.filter((row) => was.get(keyOf(row)) !== written(row));
    const stays = new Set(after.map(keyOf));
    const keys = [...was.keys()].filter((key) => !stays.has(key));
    return Promise.all([
      keys.length > 0 ? remove(transaction, { engagement, keys: JSON.stringify(keys) }) : undefined,
      saveRows(transaction, changed),
    ]);
  };
}

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

function changedMeanwhile(title: string): Refused {
  return new Refused(
    new Refusal(
      'store/changed-meanwhile',
      `“${title}” was changed by somebody else a moment ago, and your change was not kept. Load it again and repeat it.`,
    ),
  );
}
