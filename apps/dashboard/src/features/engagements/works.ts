// The programme as it is sent back whole: one work changed, added or taken out.

import type { RequestOf, WorkJson } from '@colla/wire';
import { engagements as say } from '../../catalogue/engagements.ts';
import type { Slip } from './inquiry-slips.ts';
import { said } from './rows.ts';

export type WorkInput = RequestOf<'setProgramme'>['body']['works'][number];

/** The works as they stand, with one put in the place of that of its id, or at the end. */
export function withWork(works: readonly WorkJson[], work: WorkInput): WorkInput[] {
  const known = works.some(({ id }) => id === work.id);
  const kept = works.map((other) => (other.id === work.id ? work : other));
  return known ? kept : [...kept, work];
}

export function withoutWork(works: readonly WorkJson[], id: string): WorkInput[] {
  return works.filter((work) => work.id !== id);
}

type PartState = WorkJson['part']['state'];

/** The day a part came, once it is in another state: today where none is written down yet; none where it is still to come. */
export function cameOn(receivedOn: string | undefined, state: PartState, today: string): string | undefined {
  if (state === 'wanted' || state === 'promised') return undefined;
  return receivedOn || (state === 'returned for a better copy' ? undefined : today);
}

/** A work whose part is in another state now. */
export function inState(work: WorkJson, state: PartState, today: string): WorkJson {
  const { receivedOn, ...part } = work.part;
  const came = cameOn(receivedOn, state, today);
  return { ...work, part: { ...part, state, ...(came === undefined ? {} : { receivedOn: came }) } };
}

export interface WorkDraft {
  readonly composer: string;
  readonly title: string;
  readonly minutes: string;
  readonly requested: boolean;
  readonly difficulty: string;
  /** Of the pianist's part, as typed. */
  readonly pages: string;
  readonly edition: string;
  readonly key: string;
  readonly cuts: string;
  readonly state: WorkJson['part']['state'];
  readonly permission: WorkJson['part']['permission'];
  readonly receivedOn: string;
}

/** What the form shows of a work, or of a new one. */
export function draftOf(work: WorkJson | undefined): WorkDraft {
  const { edition = '', key = '', cuts = '', state = 'wanted', permission = 'not asked' } = work?.part ?? {};
  return {
    composer: work?.composer ?? '',
    title: work?.title ?? '',
    minutes: work === undefined ? '' : String(work.minutes),
    requested: work?.requested ?? false,
    difficulty: work?.difficulty ?? '',
    pages: work?.pages === undefined ? '' : String(work.pages),
    edition,
    key,
    cuts,
    state,
    permission,
    receivedOn: work?.part.receivedOn ?? '',
  };
}

/** What is sent of a draft; what is empty is left out. */
export function workOf(draft: WorkDraft, id: string | undefined): WorkInput {
  const { composer, title, minutes, requested, difficulty, pages, state, permission } = draft;
  const { edition, key, cuts, receivedOn } = draft;
  const told = Object.entries({ edition, key, cuts, receivedOn })
    .map(([name, text]) => [name, text.trim()] as const)
    .filter(([, text]) => text !== '');
  return {
    ...(id === undefined ? {} : { id }),
    composer: composer.trim(),
    title: title.trim(),
    minutes: Number(minutes.trim() || '0'),
    requested,
    ...said('difficulty', difficulty),
    ...(pages.trim() === '' ? {} : { pages: Number(pages.trim()) }),
    part: { state, permission, ...Object.fromEntries(told) },
  };
}

/** What is wrong before it is sent, by where it stands in the work. */
export function slipsInWork({ title, minutes, pages }: WorkDraft, at: string): Slip[] {
  return [
    ...(title.trim() === '' ? [{ pointer: `${at}/title`, detail: say('wrongTitleOfWork') }] : []),
    ...(/^\d{0,3}$/.test(minutes.trim()) ? [] : [{ pointer: `${at}/minutes`, detail: say('wrongMinutes') }]),
    ...(/^\d{0,4}$/.test(pages.trim()) ? [] : [{ pointer: `${at}/pages`, detail: say('wrongPages') }]),
  ];
}
