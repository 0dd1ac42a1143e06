// Engagements: loaded whole by one statement, saved by what changed.

import type { Engagement } from '@colla/engagements';
import { Refusal } from '@colla/refusal';
import { eq, type SQLWrapper, sql } from 'drizzle-orm';
import type { PgColumn, PgTable } from 'drizzle-orm/pg-core';
import type { Books } from './books.ts';
import { newestFirst, ofStage } from './engagement-list.ts';
import { type EngagementRows, engagementOf, type NewEngagementRows, rowsOf } from './engagement-rows.ts';
import { isId } from './page.ts';
import { Refused } from './refused.ts';
import { replacing } from './replacing.ts';
import { adding, packed, packedRows, saving, unpack, unpackRows } from './rows.ts';
import { statement } from './statement.ts';
import {
  agreements,
  calls,
  costs,
  engagements,
  legs,
  moves,
  payers,
  seasons,
  works,
} from './tables/index.ts';
import type { Transaction } from './transaction.ts';

const own = (table: PgTable, engagementId: PgColumn, order: PgColumn) =>
  packedRows(table, eq(engagementId, engagements.id), sql`${order}`);
const whole = sql`${packed(engagements)},
  ${own(payers, payers.engagementId, payers.position)},
  ${own(calls, calls.engagementId, calls.position)},
  ${own(works, works.engagementId, works.position)},
  ${own(legs, legs.engagementId, legs.position)},
  ${own(costs, costs.engagementId, costs.position)},
  ${own(moves, moves.engagementId, moves.position)},
  ${own(agreements, agreements.engagementId, agreements.id)}`;

const byId = statement(
  sql`select ${whole} from ${engagements} where ${eq(engagements.id, sql.placeholder('id'))}`,
);
const between = statement(sql`select ${whole} from ${engagements} where ${engagements.id} in (
    select ${calls.engagementId} from ${calls} where ${calls.on}
      between ${sql.placeholder('from')}::text::date and ${sql.placeholder('to')}::text::date)
  order by ${engagements.askedAt}, ${engagements.id}`);
const firstDay = (engagementId: SQLWrapper) =>
  sql`(select min(${calls.on}) from ${calls} where ${calls.engagementId} = ${engagementId})`;
/** The season of its first call, the others that share a payer with it, and of these the ones agreed in that season. */
const soFar = statement(sql`
  with season as (
    select ${seasons.from} as begins, ${seasons.to} as ends from ${seasons}
    where ${firstDay(sql`${sql.placeholder('id')}::text::uuid`)} between ${seasons.from} and ${seasons.to}
    order by ${seasons.from} desc, ${seasons.to}, ${seasons.id} limit 1
  ), others as (
    select distinct theirs.engagement_id as id from ${payers} ours join ${payers} theirs on theirs.party_id = ours.party_id
    where ours.engagement_id = ${sql.placeholder('id')}::text::uuid and theirs.engagement_id <> ours.engagement_id
  )
  select count(*)::integer from others join season on ${firstDay(sql`others.id`)} between begins and ends
  join ${engagements} on ${engagements.id} = others.id and ${engagements.stage} in ('agreed', 'settled')`);
const lock = statement(
  sql`select 1 from ${engagements} where ${eq(engagements.id, sql.placeholder('id'))} for update`,
);

const save = saving(engagements, sql`where ${engagements.revision} = excluded.revision - 1`);
const freeze = adding(agreements);

export function engagementBooks(
  transaction: Transaction,
): Pick<
  Books,
  'engagement' | 'lockEngagement' | 'engagements' | 'engagementsBetween' | 'saveEngagement' | 'agreedSoFar'
> {
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
    engagements({ stage, now, ...page }) {
      const at = { now: now.toString() };
      return stage ? ofStage(transaction, page, { ...at, stage }) : newestFirst(transaction, page, at);
    },
    async engagementsBetween(from, to) {
      const found = await between(transaction, { from: from.toString(), to: to.toString() });
      return found.map(read);
    },
    async agreedSoFar(id) {
      const [row] = isId(id) ? await soFar(transaction, { id }) : [];
      return Number(row?.[0] ?? 0);
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
  const [ofPayers, ofCalls, ofWorks, ofLegs, ofCosts, ofMoves, ofAgreements] = parts;
  return {
    engagement: unpack(engagements, engagement),
    payers: unpackRows(payers, ofPayers),
    calls: unpackRows(calls, ofCalls),
    works: unpackRows(works, ofWorks),
    legs: unpackRows(legs, ofLegs),
    costs: unpackRows(costs, ofCosts),
    moves: unpackRows(moves, ofMoves),
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
    replaceMoves(transaction, id, before?.moves ?? [], after.moves),
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
const replaceMoves = replacing(moves, moves.engagementId, moves.position, ({ position }) => String(position));

function changedMeanwhile(title: string): Refused {
  return new Refused(
    new Refusal(
      'store/changed-meanwhile',
      `“${title}” was changed by somebody else a moment ago, and your change was not kept. Load it again and repeat it.`,
    ),
  );
}
