// Seasons, the latest first.

import type { Season } from '@colla/calendar';
import { eq, sql } from 'drizzle-orm';
import type { Books } from './books.ts';
import { isId, paging } from './page.ts';
import { packed, reading, saving, unpack } from './rows.ts';
import { seasons } from './tables/seasons.ts';
import type { Transaction } from './transaction.ts';

const byId = reading(seasons, sql`where ${eq(seasons.id, sql.placeholder('id'))}`);
const latestFirst = paging<Season>({
  name: 'seasons',
  by: 'day',
  newestFirst: true,
  order: [sql`${seasons.from}`, sql`${seasons.id}`],
  select: packed(seasons),
  from: sql`${seasons}`,
  read: ([json]) => unpack(seasons, json),
});
const save = saving(seasons);

export function seasonBooks(transaction: Transaction): Pick<Books, 'season' | 'seasons' | 'saveSeason'> {
  return {
    season: async (id) => (isId(id) ? (await byId(transaction, { id }))[0] : undefined),
    seasons: (page) => latestFirst(transaction, page),
    async saveSeason(season) {
      await save(transaction, [season]);
    },
  };
}
