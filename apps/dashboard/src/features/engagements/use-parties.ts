// Everybody the books know, for fields that take a name; and those who are new, entered when they are needed.
import type { PartyJson, Problem } from '@colla/wire';
import { ProblemError } from '@colla/wire/client';
import { useEffect, useState } from 'react';
import { type Answer, ask } from '../../books.ts';
import { type Named, toldApart } from './naming.ts';

/** All parties, page after page. Until they are here nobody can be told from somebody new, so nothing may be kept. */
export function useParties(): Answer<readonly Named[]> {
  const [answer, setAnswer] = useState<Answer<readonly Named[]>>({ is: 'loading' });
  const [turn, setTurn] = useState(0);
  useEffect(() => {
    let wanted = true;
    const again = () => {
      setAnswer({ is: 'loading' });
      setTurn(turn + 1);
    };
    allParties().then(
      (all) => wanted && setAnswer({ is: 'here', value: toldApart(all) }),
      (no) => wanted && setAnswer({ is: 'failed', problem: problemOf(no), again }),
    );
    return () => {
      wanted = false;
    };
  }, [turn]);
  return answer;
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

/** Enters whom the books do not know, and is busy until it has. */
export interface Entering {
  /** The id of whatever stands in a field, new names entered in turn; or why one could not be entered. */
  readonly idsOf: (names: readonly string[]) => Promise<ReadonlyMap<string, string> | Problem>;
  readonly busy: boolean;
}

export function useEntering(known: readonly Named[]): Entering {
  // Kept from one attempt to the next: a second one must not enter them twice.
  const [entered] = useState(() => new Map<string, string>());
  const [busy, setBusy] = useState(false);
  const idsOf = async (names: readonly string[]) => {
    setBusy(true);
    try {
      for (const name of names) {
        if (!entered.has(name)) entered.set(name, (await ask('addParty', { body: { name } })).id);
      }
      return new Map([...known.map(({ as, id }) => [as, id] as const), ...entered]);
    } catch (no) {
      return problemOf(no);
    } finally {
      setBusy(false);
    }
  };
  return { idsOf, busy };
}

function problemOf(no: unknown): Problem {
  if (no instanceof ProblemError) return no.problem;
  throw no;
}
