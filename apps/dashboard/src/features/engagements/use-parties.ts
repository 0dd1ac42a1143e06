// Everybody the books know, for fields that take a name; and those who are new, entered when they are needed.
import type { PartyJson, Problem } from '@colla/wire';
import { ProblemError } from '@colla/wire/client';
import { useEffect, useState } from 'react';
import { ask } from '../../books.ts';

/** All parties, page after page; empty until they are here. */
export function useParties(): readonly PartyJson[] {
  const [parties, setParties] = useState<readonly PartyJson[]>([]);
  useEffect(() => {
    let wanted = true;
    // Names are a help while one types: without them, whoever is typed is entered anew.
    allParties().then(
      (all) => wanted && setParties(all),
      () => undefined,
    );
    return () => {
      wanted = false;
    };
  }, []);
  return parties;
}

async function allParties(): Promise<PartyJson[]> {
  const all: PartyJson[] = [];
  let after: string | undefined;
  do {
    const page = await ask('listParties', { query: { limit: 200, ...(after ? { after } : {}) } });
    all.push(...page.items);
    after = page.next;
  } while (after !== undefined);
  return all;
}

/** The id of every name, new ones entered in turn; or why one could not be entered. */
export async function idsOf(
  names: readonly string[],
  known: readonly PartyJson[],
): Promise<ReadonlyMap<string, string> | Problem> {
  const ids = new Map(known.map(({ name, id }) => [name, id]));
  try {
    for (const name of names) {
      if (!ids.has(name)) ids.set(name, (await ask('addParty', { body: { name } })).id);
    }
    return ids;
  } catch (no) {
    if (no instanceof ProblemError) return no.problem;
    throw no;
  }
}
