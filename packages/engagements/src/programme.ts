// The programme: the works to be played, in order, with the pianist's part of each.

import { isAfter, type Temporal } from '@colla/calendar';
import type { WorkFacts } from '@colla/rates';
import { type OrRefusal, Refusal } from '@colla/refusal';

/** Where the pianist's part stands on its way to the music desk. */
export const PART_STATES = ['wanted', 'promised', 'received', 'returned for a better copy', 'ready'] as const;
export type PartState = (typeof PART_STATES)[number];

/** Whether it may be copied and used; a caution, not advice: the law of the place decides. */
export const PERMISSIONS = ['not asked', 'not needed', 'asked', 'granted', 'refused'] as const;
export type Permission = (typeof PERMISSIONS)[number];

/** The pianist's score of one work. */
export interface Part {
  readonly edition?: string;
  readonly key?: string;
  readonly cuts?: string;
  readonly state: PartState;
  readonly permission: Permission;
  readonly receivedOn?: Temporal.PlainDate;
}

export interface Work extends WorkFacts {
  readonly composer: string;
  readonly part: Part;
}

/** Minutes of music in a programme. */
export function programmeMinutes(programme: readonly Work[]): number {
  return programme.reduce((sum, work) => sum + work.minutes, 0);
}

/** Works whose part has not come yet. */
export function partsWanted(programme: readonly Work[]): Work[] {
  return programme.filter(({ part }) => part.state !== 'received' && part.state !== 'ready');
}

/** The same works, where no part came later than `today`. */
export function cameBy(works: readonly Work[], today: Temporal.PlainDate): OrRefusal<readonly Work[]> {
  const ahead = works.findIndex(({ part: { receivedOn: on } }) => on && isAfter(on, today));
  const work = works[ahead];
  return work?.part.receivedOn ? notCome(work, work.part.receivedOn, today).at(`/${ahead}`) : works;
}

function notCome({ title }: Work, on: Temporal.PlainDate, today: Temporal.PlainDate): Refusal {
  return new Refusal(
    'engagements/part-ahead',
    `Today is ${today}, and the part of “${title}” cannot have come on ${on}. Correct the day it came, or leave it out.`,
    { today: today.toString(), on: on.toString() },
    '/part/receivedOn',
  );
}
