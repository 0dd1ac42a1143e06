// Soloists, parents, institutions, payers.

import type { Party } from '@colla/engagements';
import { eq, sql } from 'drizzle-orm';
import type { Books } from './books.ts';
import { filedAs, idList, isId, paging } from './page.ts';
import { packed, present, type Row, reading, saving, unpack } from './rows.ts';
import { statement } from './statement.ts';
import { parties } from './tables/parties.ts';
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
const save = saving(parties);

export function partyBooks(
  transaction: Transaction,
): Pick<Books, 'party' | 'lockParty' | 'parties' | 'partyNames' | 'saveParty'> {
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
    async partyNames(ids) {
      const found = await names(transaction, { ids: idList(ids) });
      return new Map(found.map(([id, name]) => [String(id), String(name)]));
    },
    async saveParty(party) {
      await save(transaction, [{ ...party, address: [...party.address], filedAs: filedAs(party.name) }]);
    },
  };
}

function party({ filedAs: _, ...row }: Row<typeof parties>): Party {
  return present(row);
}
