// Soloists, parents, institutions, payers.

import type { Party } from '@colla/engagements';
import { eq, sql } from 'drizzle-orm';
import type { Books } from './books.ts';
import { filedAs, idList, isId, paging } from './page.ts';
import { packed, present, type Row, reading, saving, unpack } from './rows.ts';
import { statement } from './statement.ts';
import { engagements } from './tables/engagements.ts';
import { parties } from './tables/parties.ts';
import { payers } from './tables/payers.ts';
import type { Transaction } from './transaction.ts';

const byId = reading(parties, sql`where ${eq(parties.id, sql.placeholder('id'))}`);
const lock = statement(
  sql`select 1 from ${parties} where ${eq(parties.id, sql.placeholder('id'))} for update`,
);
const byName = paging({
  name: 'parties',
  by: 'words',
  newestFirst: false,
  order: [sql`${parties.filedAs}`, sql`${parties.id}`],
  select: packed(parties),
  from: sql`${parties}`,
  read: ([json]) => party(unpack(parties, json)),
});
const names = statement(sql`select ${parties.id}::text, ${parties.name} from ${parties}
  where ${parties.id} = any(${sql.placeholder('ids')}::text::uuid[])`);
const namesOf =
  statement(sql`select ${parties.id}::text, ${parties.name} from ${parties} where ${parties.id} in (
    select unnest(array[${engagements.soloistParty}, ${engagements.institutionParty}]) from ${engagements}
      where ${eq(engagements.id, sql.placeholder('id'))}
    union all select ${payers.partyId} from ${payers} where ${eq(payers.engagementId, sql.placeholder('id'))})`);
const save = saving(parties);

export function partyBooks(
  transaction: Transaction,
): Pick<Books, 'party' | 'lockParty' | 'parties' | 'partyNames' | 'partyNamesOf' | 'saveParty'> {
  const load = async (id: string) => {
    const [row] = isId(id) ? await byId(transaction, { id }) : [];
    return row && party(row);
  };
  return {
    party: load,
    async lockParty(id) {
      if (!isId(id)) return undefined;
      const [, kept] = await Promise.all([lock(transaction, { id }), load(id)]);
      return kept;
    },
    parties: (page) => byName(transaction, page),
    partyNames: async (ids) => byParty(await names(transaction, { ids: idList(ids) })),
    partyNamesOf: async (engagement) =>
      byParty(isId(engagement) ? await namesOf(transaction, { id: engagement }) : []),
    async saveParty(party) {
      await save(transaction, [{ ...party, address: [...party.address], filedAs: filedAs(party.name) }]);
    },
  };
}

function byParty(rows: readonly unknown[][]): ReadonlyMap<string, string> {
  return new Map(rows.map(([id, name]) => [String(id), String(name)]));
}

function party({ filedAs: _, ...row }: Row<typeof parties>): Party {
  return present(row);
}
