// What an edit was made from: every answer that shows a noun carries a tag of its parts (ETag), and an edit that sends
// the tag back (If-Match, RFC 9110) is refused where the noun has changed since, with what of it did.

import { createHash } from 'node:crypto';
import type { Temporal } from '@colla/calendar';
import { Refusal } from '@colla/refusal';
import type { Books } from '@colla/store';
import {
  engagement,
  engagementWhole,
  organisation,
  party,
  type Route,
  showEngagement,
  showOrganisation,
  showParty,
  showTariffWhole,
  tariffWhole,
} from '@colla/wire';
import type { Request } from 'express';
import { houseOf } from './move.ts';
import { found, refuse } from './refusals.ts';

/** The parts of each noun that somebody may have changed, in words, and what shows them. */
const PARTS = {
  engagement: [
    ['stage', 'stage', 'endedAt'],
    ['title', 'title'],
    ['people', 'soloistParty', 'institutionParty', 'payers'],
    ['facts', 'currency', 'soloist', 'sharers', 'pianistClass', 'circumstances', 'rolledOver'],
    ['note', 'note'],
    ['calls', 'calls', 'moves'],
    ['programme', 'programme'],
    ['journeys', 'legs'],
    ['costs', 'costs'],
    ['quote', 'quote'],
    ['agreement', 'agreement'],
  ],
  party: [
    ['name', 'name'],
    ['address', 'address'],
    ['e-mail address', 'email'],
    ['reference', 'reference'],
  ],
  organisation: [
    ['name and address', 'name', 'address', 'email', 'taxNumber'],
    ['means of payment', 'payTo'],
    ['currency, place and language', 'currency', 'zone', 'locale', 'paper'],
    ['weekly limit', 'weeklyLimit'],
    ['holidays and terms', 'holidays', 'terms'],
    ['closed years', 'closedThrough'],
  ],
  tariff: [['versions', 'versions']],
} as const satisfies Record<string, readonly (readonly [word: string, ...keys: string[]])[]>;
type Noun = keyof typeof PARTS;

/** The tag of what an answer shows; undefined where that is no noun that is edited. */
export function tagOf({ answer }: Pick<Route, 'answer'>, shown: unknown): string | undefined {
  const noun = SHOWN.get(answer);
  return noun && `"${marksOf(noun, shown).join('.')}"`;
}

const SHOWN: ReadonlyMap<unknown, Noun> = new Map<unknown, Noun>([
  [engagement, 'engagement'],
  [engagementWhole, 'engagement'],
  [party, 'party'],
  [organisation, 'organisation'],
  [tariffWhole, 'tariff'],
]);

/** One mark for each part. A part that is left out has a mark as well. */
function marksOf(noun: Noun, shown: unknown): string[] {
  const parts: Readonly<Record<string, unknown>> = { ...Object(shown) };
  return PARTS[noun].map(([, ...keys]) => {
    const text = JSON.stringify(
      keys.map((key) => parts[key] ?? null),
      unsaid,
    );
    return createHash('sha256').update(text).digest('base64url').slice(0, 8);
  });
}

/** What is said anew in every language is no part of it. */
function unsaid(key: string, value: unknown): unknown {
  return key === 'sentences' ? undefined : value;
}

interface Edit {
  readonly params: Readonly<Record<string, string>>;
  readonly books: Books;
  readonly now: Temporal.Instant;
}

/** Refuses an edit made from what is not so any more. The noun stays locked until the transaction ends. */
export async function mustBeAsSeen(request: Request, { path }: Route, edit: Edit): Promise<void> {
  const seen = request.get('if-match')?.trim();
  const noun = EDITED[path.split('/')[1] ?? ''];
  if (seen === undefined || seen === '*' || noun === undefined) return;
  const now = marksOf(noun, await CURRENT[noun](edit));
  const tags = seen.split(',').map((tag) => tag.trim());
  if (!tags.includes(`"${now.join('.')}"`)) refuse(stale(noun, tags.at(-1) ?? '', now));
}

const EDITED: Readonly<Record<string, Noun>> = {
  engagements: 'engagement',
  parties: 'party',
  organisation: 'organisation',
  tariffs: 'tariff',
};

const CURRENT: Readonly<Record<Noun, (edit: Edit) => Promise<unknown>>> = {
  engagement: async ({ params: { id = '' }, books }) => {
    const [kept, organisation] = await Promise.all([books.lockEngagement(id), books.organisation()]);
    const engagement = found(kept, 'engagement');
    return showEngagement(engagement, await houseOf(engagement, { organisation, books }));
  },
  party: async ({ params: { id = '' }, books }) => showParty(found(await books.lockParty(id), 'party')),
  organisation: async ({ books }) => showOrganisation(await books.lockOrganisation()),
  tariff: async ({ params: { id = '' }, books }) => {
    const [{ locale }, kept] = await Promise.all([books.organisation(), books.tariff(id)]);
    return showTariffWhole(found(kept, 'tariff'), locale);
  },
};

function stale(noun: Noun, seen: string, now: readonly string[]): Refusal {
  const before = seen.replaceAll('"', '').split('.');
  const changed = PARTS[noun].flatMap(([word], at) => (before[at] === now[at] ? [] : [word]));
  const what = before.length === now.length ? `its ${said(changed)} changed` : 'it was changed';
  return new Refusal(
    'edits/stale',
    `This was made from an earlier state of the ${noun}: meanwhile ${what}. Look at it again, then change what you want.`,
    { changed: changed.join(', ') },
  );
}

function said(words: readonly string[]): string {
  const last = words.at(-1) ?? '';
  return words.length < 2 ? last : `${words.slice(0, -1).join(', ')} and ${last}`;
}
