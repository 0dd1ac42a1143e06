// An inquiry while it is being written down: who, what, when; read into what the server keeps.

import type { WrittenSpan } from '@colla/calendar';
import { CALL_KINDS, type CallKind } from '@colla/hours';
import { PAYER } from '@colla/rates';
import type { EngagementInput, RequestOf } from '@colla/wire';
import { meantBy, type Named } from './naming.ts';
import { pastMidnight } from './spans.ts';

export interface CallRow {
  readonly key: number;
  readonly kind: CallKind;
  readonly label: string;
  readonly on: string;
  readonly from: string;
  readonly until: string;
  readonly place: string;
  readonly zone: string;
  /** What must happen first; empty for a call that is simply asked for. */
  readonly onlyIf: string;
  /** The last day on which it is kept free; empty where none is said. */
  readonly lapsesOn: string;
}

export interface WorkRow {
  readonly key: number;
  readonly composer: string;
  readonly title: string;
  readonly minutes: string;
  readonly requested: boolean;
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
    sharers: '1',
    pianistClass: '',
    circumstances: '',
    note: '',
    calls: [emptyCall(0, zone)],
    works: [],
  };
}

export function emptyCall(key: number, zone: string): CallRow {
  const unsaid = { label: '', on: '', from: '', until: '', place: '', onlyIf: '', lapsesOn: '' };
  return { ...unsaid, key, kind: CALL_KINDS[0], zone };
}

/** A row in which nobody has written anything: it is no call yet. */
export function isUntouched({ key, zone, ...row }: CallRow): boolean {
  const { key: _key, zone: _zone, ...empty } = emptyCall(key, zone);
  return Object.entries(empty).every(([field, unsaid]) => row[field as keyof typeof row] === unsaid);
}

/** A further call: at the place, zone and clock times of the last one, a day not yet chosen. */
export function callAfter(calls: readonly CallRow[], zone: string): CallRow {
  const key = nextKey(calls);
  const last = calls.at(-1);
  return last ? { ...last, key, on: '', label: '', onlyIf: '', lapsesOn: '' } : emptyCall(key, zone);
}

/** Another soloist; who pays follows, for as long as it is the soloist who pays. */
export function withSoloist({ soloist, payers }: People, name: string): Pick<People, 'soloist' | 'payers'> {
  const [first, ...others] = payers;
  if (!first || first.name !== soloist) return { soloist: name, payers };
  return { soloist: name, payers: [{ ...first, name }, ...others] };
}

export function nextKey(rows: readonly { readonly key: number }[]): number {
  return Math.max(-1, ...rows.map(({ key }) => key)) + 1;
}

/** The names it mentions that nobody in the books has yet: they are entered with it. */
export function newNames(draft: InquiryDraft, known: readonly Named[]): string[] {
  const names = [draft.soloist, draft.institution, ...draft.payers.map(({ name }) => name)];
  const isNew = (name: string) => meantBy(name, known).is === 'new';
  return [...new Set(names.filter(isNew).map((name) => name.trim()))];
}

/** A row's times as written; an end past midnight is on the next day. */
export function plannedOf({ on, from, until, zone }: CallRow): WrittenSpan {
  return pastMidnight({ on, from, until, zone });
}

/** What is sent, once every name has its id. */
export function inquiryOf(draft: InquiryDraft, ids: ReadonlyMap<string, string>): EngagementInput {
  return {
    ...peopleOf(draft, ids),
    calls: draft.calls.filter((call) => !isUntouched(call)).map(callInputOf),
    programme: draft.works.map(({ composer, title, minutes, requested }) => ({
      composer: composer.trim(),
      title: title.trim(),
      minutes: Number(minutes.trim()),
      requested,
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

/** A day on which a hold lapses is its own to the end. */
const LAST_MINUTE = '23:59';

export function callInputOf(call: CallRow): NonNullable<EngagementInput['calls']>[number] {
  return {
    kind: call.kind,
    ...said('label', call.label),
    place: call.place.trim(),
    planned: plannedOf(call),
    ...said('onlyIf', call.onlyIf),
    ...(call.lapsesOn === '' ? {} : { lapsesAt: { on: call.lapsesOn, at: LAST_MINUTE, zone: call.zone } }),
  };
}

function said<Name extends string>(name: Name, text: string): { [key in Name]?: string } {
  const words = text.trim();
  return words === '' ? {} : ({ [name]: words } as { [key in Name]: string });
}
