// Submissions: what is sent twice in one moment is one, and what got no answer is sent again under the same key, so
// that it happens once however often it is asked (draft-ietf-httpapi-idempotency-key-header-07).

/** Sends a request under a key. `what` tells one request from another. */
export type Submit = <Answer>(what: string, send: (key: string) => Promise<Answer>) => Promise<Answer>;

/** Submissions of one page; `isLost` says of a failure that no answer came, so that nobody knows what happened. */
export function submissions(isLost: (reason: unknown) => boolean): Submit {
  const underWay = new Map<string, Promise<unknown>>();
  const unanswered = new Map<string, string>();
  const sent = async <Answer>(what: string, send: (key: string) => Promise<Answer>): Promise<Answer> => {
    const key = unanswered.get(what) ?? newKey();
    unanswered.set(what, key);
    try {
      const answer = await send(key).catch((reason) => (isLost(reason) ? send(key) : Promise.reject(reason)));
      unanswered.delete(what);
      return answer;
    } catch (reason) {
      if (!isLost(reason)) unanswered.delete(what);
      throw reason;
    } finally {
      underWay.delete(what);
    }
  };
  return <Answer>(what: string, send: (key: string) => Promise<Answer>) => {
    const same = underWay.get(what) as Promise<Answer> | undefined;
    if (same) return same;
    const answer = sent(what, send);
    underWay.set(what, answer);
    return answer;
  };
}

/** 128 bits that nobody else has, in a form the header may hold. */
function newKey(): string {
  return [...crypto.getRandomValues(new Uint8Array(16))]
    .map((byte) => byte.toString(16).padStart(2, '0'))
    .join('');
}
