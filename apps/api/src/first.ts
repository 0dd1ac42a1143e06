// The first start: one organisation with an empty book.

import { zone } from '@colla/calendar';
import type { Organisation } from '@colla/engagements';
import { currency } from '@colla/money';
import { granted, refused } from '@colla/refusal';
import type { Store } from '@colla/store';

/** The organisation of the books, made if there is none. `runtimeZone` is the machine's own, as it names it. */
export async function firstOrganisation(
  store: Store,
  { newId, runtimeZone }: { newId: () => string; runtimeZone: string },
): Promise<string> {
  const [first] = await store.organisations();
  if (first !== undefined) return first;
  const organisation = emptyBook(newId(), runtimeZone);
  await store.addOrganisation(organisation);
  return organisation.id;
}

/** Thirty hours of calls a week: our own guess at a full week, for whoever has not said theirs. */
const WEEKLY_LIMIT = 30 * 60;

function emptyBook(id: string, runtimeZone: string): Organisation {
  const place = zone(runtimeZone);
  return {
    id,
    name: 'My practice',
    address: [],
    payTo: [],
    currency: granted(currency('EUR')),
    zone: refused(place) ? granted(zone('UTC')) : place,
    locale: 'en',
    paper: 'A4',
    weeklyLimit: WEEKLY_LIMIT,
    holidays: [],
    terms: [],
  };
}
