// What the soloist's engagement before this one has left of what rolls over, to be proposed.
import type { EngagementWholeJson } from '@colla/wire';
import { useEffect, useState } from 'react';
import { ask } from '../../books.ts';
import { engagementsBefore } from './roll-over.ts';

export interface Left {
  /** The engagement that left it. */
  readonly title: string;
  /** Minutes by clause. */
  readonly minutes: Readonly<Record<string, number>>;
}

/** Undefined until it is known, and where there is none: a proposal that cannot be had is not missed. */
export function useLeft(engagement: EngagementWholeJson, wanted: boolean): Left | undefined {
  const [left, setLeft] = useState<Left>();
  useEffect(() => {
    let stillWanted = wanted;
    if (wanted)
      leftBefore(engagement).then(
        (found) => stillWanted && setLeft(found),
        () => undefined,
      );
    return () => {
      stillWanted = false;
    };
  }, [engagement, wanted]);
  return left;
}

async function leftBefore(engagement: EngagementWholeJson): Promise<Left | undefined> {
  const { soloistParty, parties } = engagement;
  if (soloistParty === undefined) return undefined;
  const { items } = await ask('listEngagements', { query: { limit: 200 } });
  for (const { id, title } of engagementsBefore(engagement, parties[soloistParty], items)) {
    const before = await ask('getEngagement', { params: { id } });
    // Two soloists may share a name.
    if (before.soloistParty !== soloistParty) continue;
    const { statement } = await ask('getStatement', { params: { id }, query: {} });
    const minutes = statement.entitlements.map(({ clause, left }) => [clause, left] as const);
    return { title, minutes: Object.fromEntries(minutes) };
  }
  return undefined;
}
