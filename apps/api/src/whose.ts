// Whose session a token is. A screen asks several times a second, and a session is not altered once it is kept: so the
// books are asked for it once a minute.

import { Temporal } from '@colla/calendar';
import type { Session, Store } from '@colla/store';

/** The organisation of a session, by the hash of its token, as long as the session lasts. */
export type Whose = (tokenHash: string) => Promise<string | undefined>;

/** How long a session that was found is believed without asking again. */
const SECONDS_BELIEVED = 60;

/** Only sessions that were found are kept in mind: whoever tries tokens fills no memory. */
export function sessionsOf({
  store,
  now,
}: {
  store: Pick<Store, 'session'>;
  now: () => Temporal.Instant;
}): Whose {
  const believed = new Map<string, Session>();
  return async (tokenHash) => {
    const at = now();
    const known = believed.get(tokenHash);
    if (known && isBefore(at, known.until)) return known.organisation;
    believed.delete(tokenHash);
    const found = await store.session(tokenHash, at);
    if (found) believed.set(tokenHash, believedFrom(at, found));
    return found?.organisation;
  };
}

function believedFrom(at: Temporal.Instant, { organisation, until }: Session): Session {
  const again = at.add({ seconds: SECONDS_BELIEVED });
  return { organisation, until: isBefore(until, again) ? until : again };
}

function isBefore(one: Temporal.Instant, other: Temporal.Instant): boolean {
  return Temporal.Instant.compare(one, other) < 0;
}
