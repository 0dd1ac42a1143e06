// One call while it is being written down, and what is sent of it: new, or changed later.

import type { WrittenSpan } from '@colla/calendar';
import { CALL_KINDS, type CallKind } from '@colla/hours';
import type { CallInput, CallJson, RequestOf } from '@colla/wire';
import { dayOf } from '../../local-time.ts';
import { callOf } from './facts.ts';
import { nextKey, said } from './rows.ts';
import { pastMidnight, writeSpan } from './spans.ts';

export interface CallRow {
  readonly key: number;
  readonly kind: CallKind;
  readonly label: string;
  readonly on: string;
  readonly from: string;
  readonly until: string;
  /** The second of two like times is meant, in the night when clocks go back. */
  readonly fromAgain: boolean;
  readonly untilAgain: boolean;
  readonly place: string;
  readonly zone: string;
  /** What must happen first; empty for a call that is simply asked for. */
  readonly onlyIf: string;
  /** The last day on which it is kept free; empty where none is said. */
  readonly lapsesOn: string;
}

export function emptyCall(key: number, zone: string): CallRow {
  const unsaid = { label: '', on: '', from: '', until: '', place: '', onlyIf: '', lapsesOn: '' };
  return { ...unsaid, fromAgain: false, untilAgain: false, key, kind: CALL_KINDS[0], zone };
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
  const unsaid = { on: '', fromAgain: false, untilAgain: false, label: '', onlyIf: '', lapsesOn: '' };
  return last ? { ...last, ...unsaid, key } : emptyCall(key, zone);
}

/** A row's times as written; an end past midnight is on the next day. */
export function plannedOf({ on, from, until, zone, fromAgain, untilAgain }: CallRow): WrittenSpan {
  const again = { ...(fromAgain ? { fromAgain } : {}), ...(untilAgain ? { untilAgain } : {}) };
  return pastMidnight({ on, from, until, zone, ...again });
}

/** A day on which a hold lapses is its own to the end. */
const LAST_MINUTE = '23:59';

/** What is sent of a new call. */
export function callInputOf(call: CallRow): CallInput {
  return {
    kind: call.kind,
    ...said('label', call.label),
    place: call.place.trim(),
    planned: plannedOf(call),
    ...said('onlyIf', call.onlyIf),
    ...(call.lapsesOn === '' ? {} : { lapsesAt: endOf(call.lapsesOn, call.zone) }),
  };
}

/** A call as it is kept, to be changed. */
export function rowOf(call: CallJson): CallRow {
  const { on, from, until, zone, fromAgain = false, untilAgain = false } = writeSpan(callOf(call).planned);
  const { kind, label = '', place, standing } = call;
  const lapsesOn = standing.is === 'held' && standing.lapsesAt ? dayOf(standing.lapsesAt) : '';
  return { ...emptyCall(0, zone), kind, label, place, on, from, until, fromAgain, untilAgain, lapsesOn };
}

/** What is sent of a change: a name or a lapse day that is emptied is taken away. */
export function callChangeOf(row: CallRow, call: CallJson): RequestOf<'changeCall'>['body'] {
  const before = rowOf(call);
  const label = row.label.trim();
  return {
    kind: row.kind,
    place: row.place.trim(),
    planned: plannedOf(row),
    ...(label === before.label ? {} : { label: label === '' ? null : label }),
    ...(row.lapsesOn === before.lapsesOn
      ? {}
      : { lapsesAt: row.lapsesOn === '' ? null : endOf(row.lapsesOn, row.zone) }),
  };
}

function endOf(day: string, zone: string) {
  return { on: day, at: LAST_MINUTE, zone };
}
