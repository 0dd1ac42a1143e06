// The organisation whose books these are.

import type { Organisation } from '@colla/engagements';
import { sql } from 'drizzle-orm';
import type { Books } from './books.ts';
import { present, reading, saving } from './rows.ts';
import { statement } from './statement.ts';
import { organisations } from './tables/organisations.ts';
import type { Transaction } from './transaction.ts';

const own = reading(organisations, sql``);
const lock = statement(sql`select 1 from ${organisations} for update`);
const save = saving(organisations);

export function organisationBooks(
  transaction: Transaction,
): Pick<Books, 'organisation' | 'lockOrganisation' | 'changeOrganisation'> {
  const load = async (): Promise<Organisation> => {
    const [row] = await own(transaction);
    if (!row) throw new Error('these are the books of no organisation');
    return present(row);
  };
  return {
    organisation: load,
    async lockOrganisation() {
      const [, kept] = await Promise.all([lock(transaction), load()]);
      return kept;
    },
    async changeOrganisation(to) {
      await save(transaction, [row(to)]);
    },
  };
}

/** Keeps a new organisation; the transaction must be its own. */
export async function addOrganisation(transaction: Transaction, organisation: Organisation): Promise<void> {
  await save(transaction, [row(organisation)]);
}

function row(organisation: Organisation) {
  const { address, payTo, holidays, ...rest } = organisation;
  return { ...rest, address: [...address], payTo: [...payTo], holidays: [...holidays] };
}
