// The word by which an agreed call moves: whose wish it is, and when it was said.

import { Temporal } from '@colla/calendar';
import type { Who } from '@colla/hours';
import type { RequestOf } from '@colla/wire';
import { type CallRow, plannedOf } from './call-row.ts';
import { clock } from './spans.ts';

export interface WordOfShift {
  /** Nobody's where the call was written down wrong: it was always meant to be then. */
  readonly by: Who | 'nobody';
  /** By the clock of the place where the call stands. */
  readonly on: string;
  readonly at: string;
  readonly zone: string;
}

/** Said now, by the payer: the likeliest. */
export function wordOfShift(zone: string): WordOfShift {
  const now = Temporal.Now.zonedDateTimeISO(zone);
  return { by: 'payer', on: now.toPlainDate().toString(), at: clock(now), zone };
}

/** Whether the times are others than those that stand. */
export function isShifted(row: CallRow, stands: CallRow): boolean {
  return JSON.stringify(plannedOf(row)) !== JSON.stringify(plannedOf(stands));
}

/** What is sent of it; nothing where the times are only put right. */
export function shiftedBy(word: WordOfShift): Pick<RequestOf<'changeCall'>['body'], 'moved'> {
  const { by, ...said } = word;
  return by === 'nobody' ? {} : { moved: { ...said, by } };
}
