// What the tariffs of the practice ask of an engagement. A form keeps in sight only what a price can turn on, and offers
// the very words: a clause fits no other.
import type { WrittenTariff } from '@colla/rates';

export interface Asked {
  /** The words that the clauses use about something; none where no clause asks for it. */
  readonly words: (about: AskedWord) => readonly string[];
  /** Whether a clause charges by the page. */
  readonly pages: boolean;
  /** Whether a clause charges for each soloist who shares it. */
  readonly sharers: boolean;
}

/** What is asked in words of the organisation's own, and the parameters under which clauses name them. */
const PARAMETERS = {
  level: ['levels'],
  instrument: ['instruments'],
  study: ['study'],
  membership: ['memberships'],
  pianistClass: ['pianists'],
  circumstances: ['circumstances'],
  difficulty: ['difficulties', 'difficulty'],
  label: ['labels', 'named'],
  place: ['places'],
  term: ['terms'],
  role: ['payer'],
} as const;
export type AskedWord = keyof typeof PARAMETERS;

/** Whatever the tariffs ask together, each word once and in alphabetical order. */
export function askedBy(tariffs: readonly Pick<WrittenTariff, 'clauses'>[]): Asked {
  const said = new Map<string, Set<string>>();
  for (const { clauses } of tariffs) note(clauses, '', said);
  const wordsOn = (about: AskedWord) => {
    const names: readonly string[] = PARAMETERS[about];
    return [...new Set(names.flatMap((name) => [...(said.get(name) ?? [])]))].sort();
  };
  const each = said.get('each');
  return {
    words: wordsOn,
    pages: each?.has('page') ?? false,
    sharers: each?.has('soloist') ?? false,
  };
}

/** Notes every text that stands under a parameter, however deep: what kind of clause it is does not matter. */
function note(written: unknown, under: string, said: Map<string, Set<string>>): void {
  if (typeof written === 'string') said.set(under, (said.get(under) ?? new Set()).add(written));
  else if (Array.isArray(written)) for (const item of written) note(item, under, said);
  else if (typeof written === 'object' && written !== null)
    for (const [name, inside] of Object.entries(written)) note(inside, name, said);
}
