// Tariffs and their versions.

import type { Tariff } from '@colla/rates';
import { Refusal } from '@colla/refusal';
import { eq, sql } from 'drizzle-orm';
import type { Books, KeptTariff } from './books.ts';
import { filedAs, isId, paging } from './page.ts';
import { Refused } from './refused.ts';
import { adding, packedRows, saving, unpackRows } from './rows.ts';
import { statement } from './statement.ts';
import { tariffs, tariffVersions } from './tables/tariffs.ts';
import type { Transaction } from './transaction.ts';

const versions = packedRows(
  tariffVersions,
  eq(tariffVersions.tariffId, tariffs.id),
  sql`${tariffVersions.version}`,
);
const byId = statement(
  sql`select ${tariffs.id}::text, ${versions} from ${tariffs} where ${eq(tariffs.id, sql.placeholder('id'))}`,
);
const byName = paging({
  name: 'tariffs',
  by: 'words',
  newestFirst: false,
  order: [sql`${tariffs.filedAs}`, sql`${tariffs.id}`],
  select: sql`${tariffs.id}::text, ${versions}`,
  from: sql`${tariffs}`,
  read: keptTariff,
});
const save = saving(tariffs);
const add = adding(tariffVersions, sql`on conflict do nothing`);

export function tariffBooks(
  transaction: Transaction,
): Pick<Books, 'tariff' | 'tariffs' | 'addTariffVersion'> {
  return {
    async tariff(id) {
      const [row] = isId(id) ? await byId(transaction, { id }) : [];
      return row && keptTariff(row);
    },
    tariffs: (page) => byName(transaction, page),
    async addTariffVersion(id, tariff) {
      const row = { tariffId: id, version: tariff.version, tariff };
      const [, added] = await Promise.all([
        save(transaction, [{ id, filedAs: filedAs(tariff.name) }]),
        add(transaction, [row]),
      ]);
      if (added === 0) throw versionTaken(tariff);
    },
  };
}

function keptTariff([id, json]: unknown[]): KeptTariff {
  const [first, ...later] = unpackRows(tariffVersions, json).map(({ tariff }) => tariff);
  if (!first) throw new Error(`tariff ${String(id)} has no version`);
  return { id: String(id), versions: [first, ...later] };
}

function versionTaken({ name, version }: Tariff): Refused {
  return new Refused(
    new Refusal(
      'store/version-taken',
      `Version ${version} of “${name}” is in the books already, and a version is never altered. Load it again and make the next one.`,
      { version },
    ),
  );
}
