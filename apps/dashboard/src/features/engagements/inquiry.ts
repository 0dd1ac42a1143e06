// An inquiry while it is being written down: who, what, when; read into what the server keeps.

import { PAYER } from '@colla/rates';
import type { EngagementInput, RequestOf } from '@colla/wire';
import { type CallRow, callInputOf, emptyCall, isUntouched } from './call-row.ts';
import { meantBy, type Named } from './naming.ts';
import { said } from './rows.ts';

export interface WorkRow {
  readonly key: number;
  readonly composer: string;
  readonly title: string;
  readonly minutes: string;
  readonly requested: boolean;
  readonly difficulty: string;
  /** Of the pianist's part, as typed. */
  readonly pages: string;
}

export interface PayerRow {
  readonly key: number;
  readonly role: string;
  /** What stands in its field, as for soloist and institution. */
  readonly name: string;
}

export interface InquiryDraft {
  readonly title: string;
  readonly soloist: string;
  readonly institution: string;
  readonly payers: readonly PayerRow[];
  readonly level: string;
  readonly instrument: string;
  readonly study: string;
  readonly membership: string;
  /** Soloists who share it, as typed. */
  readonly sharers: string;
  readonly pianistClass: string;
  /** Circumstances the tariff names, one on each line. */
  readonly circumstances: string;
  readonly note: string;
  readonly calls: readonly CallRow[];
  readonly works: readonly WorkRow[];
}

/** What an inquiry and a later change of it both ask. */
export type People = Omit<InquiryDraft, 'calls' | 'works'>;

/** An empty inquiry: one call to fill in, one payer. */
export function emptyInquiry(zone: string): InquiryDraft {
  return {
    title: '',
    soloist: '',
    institution: '',
    payers: [{ key: 0, role: PAYER, name: '' }],
    level: '',
    instrument: '',
    study: '',
    membership: '',
    sharers: '1',
    pianistClass: '',
    circumstances: '',
    note: '',
    calls: [emptyCall(0, zone)],
    works: [],
  };
}

/** Another soloist; who pays follows, for as long as it is the soloist who pays. */
export function withSoloist({ soloist, payers }: People, name: string): Pick<People, 'soloist' | 'payers'> {
  const [first, ...others] = payers;
  if (!first || first.name !== soloist) return { soloist: name, payers };
  return { soloist: name, payers: [{ ...first, name }, ...others] };
}

export function emptyWork(key: number): WorkRow {
  return { key, composer: '', title: '', minutes: '', requested: false, difficulty: '', pages: '' };
}

/** The names it mentions that nobody in the books has yet: they are entered with it. */
export function newNames(draft: InquiryDraft, known: readonly Named[]): string[] {
  const names = [draft.soloist, draft.institution, ...draft.payers.map(({ name }) => name)];
  const isNew = (name: string) => meantBy(name, known).is === 'new';
  return [...new Set(names.filter(isNew).map((name) => name.trim()))];
}

/** What is sent, once every name has its id. */
export function inquiryOf(draft: InquiryDraft, ids: ReadonlyMap<string, string>): EngagementInput {
  return {
    ...peopleOf(draft, ids),
    calls: draft.calls.filter((call) => !isUntouched(call)).map(callInputOf),
    programme: draft.works.map(({ composer, title, minutes, requested, difficulty, pages }) => ({
      composer: composer.trim(),
      title: title.trim(),
      minutes: Number(minutes.trim()),
      requested,
      ...said('difficulty', difficulty),
      ...(pages.trim() === '' ? {} : { pages: Number(pages.trim()) }),
    })),
  };
}

/** Title, people and what a price may depend on, as they are sent by themselves. */
export function peopleOf(
  people: People,
  ids: ReadonlyMap<string, string>,
): Omit<EngagementInput, 'calls' | 'programme'> {
  const id = (name: string) => ids.get(name.trim());
  const payers = people.payers.flatMap(({ role, name }) => {
    const party = id(name);
    return party === undefined ? [] : [[role.trim(), party] as const];
  });
  const [soloistParty, institutionParty] = [id(people.soloist), id(people.institution)];
  return {
    title: people.title.trim(),
    ...(soloistParty ? { soloistParty } : {}),
    ...(institutionParty ? { institutionParty } : {}),
    payers: Object.fromEntries(payers),
    soloist: {
      ...said('level', people.level),
      ...said('instrument', people.instrument),
      ...said('study', people.study),
      ...said('membership', people.membership),
    },
    sharers: Number(people.sharers.trim()),
    ...said('pianistClass', people.pianistClass),
    circumstances: people.circumstances
      .split('\n')
      .map((line) => line.trim())
      .filter((line) => line !== ''),
    ...said('note', people.note),
  };
}

/** The same for a later change, where what has been emptied is taken away. */
export function changeOf(
  people: People,
  ids: ReadonlyMap<string, string>,
): RequestOf<'changeEngagement'>['body'] {
  return {
    soloistParty: null,
    institutionParty: null,
    pianistClass: null,
    note: null,
    ...peopleOf(people, ids),
  };
}
