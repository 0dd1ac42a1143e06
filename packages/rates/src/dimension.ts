// A dimension along which the trade tells one case from another: by its words, by a range, or by an hour of the day.

import { readTime } from '@colla/calendar';
import type { Call } from '@colla/hours';
import { refused } from '@colla/refusal';
import { z } from 'zod';
import type { Facts } from './facts.ts';
import { timeField } from './fields.ts';

/** What a selector may ask along one dimension. */
export interface Dimension<Wanted> {
  /** Whether it asks about the call (or only about the engagement as a whole). */
  readonly ofCall: boolean;
  readonly fits: (wanted: Wanted, call: Call | undefined, facts: Facts) => boolean;
  /** Whether whatever fits `inner` fits `outer` too. */
  readonly within: (inner: Wanted, outer: Wanted) => boolean;
  /** Whether nothing can fit both. */
  readonly apart: (one: Wanted, other: Wanted) => boolean;
}

type Shows = (call: Call | undefined, facts: Facts) => readonly (string | undefined)[];

/**
 * Any of some words. `single`: one fact shows one word, so that two lists without a word in common never both fit.
 */
export function byWords(
  shows: Shows,
  { ofCall, single }: { ofCall: boolean; single: boolean | ((words: readonly string[]) => boolean) },
): Dimension<readonly string[]> {
  const isSingle = (words: readonly string[]) => (typeof single === 'boolean' ? single : single(words));
  return {
    ofCall,
    fits: (wanted, call, facts) =>
      shows(call, facts).some((word) => word !== undefined && wanted.includes(word)),
    within: (inner, outer) => inner.every((word) => outer.includes(word)),
    apart: (one, other) => isSingle(one) && isSingle(other) && !one.some((word) => other.includes(word)),
  };
}

/** Both ends belong to it; an end left out is open. */
export interface Range {
  readonly from?: number | undefined;
  readonly to?: number | undefined;
}

type RangeUnit = 'minutes' | 'days' | 'count';

/** One end of a range of whole figures, which may be left open. */
export function endField(
  title: string,
  { least = 0, unit = 'count' }: { least?: number; unit?: RangeUnit } = {},
) {
  return z.int().min(least).max(100_000).optional().meta({ title, unit });
}

/** A range of whole figures. */
export function rangeField(title: string, unit: RangeUnit) {
  return z
    .strictObject({ from: endField('From', { unit }), to: endField('To', { unit }) })
    .refine(
      ({ from, to }) => from !== undefined || to !== undefined,
      'asks for nothing. Give one end at least',
    )
    .refine(({ from = 0, to = from }) => from <= to, 'ends below where it begins. Exchange its two ends')
    .optional()
    .meta({ title });
}

/** A figure within a range; what has no such figure fits none. */
export function byRange(
  measure: (call: Call | undefined, facts: Facts) => number | undefined,
  { ofCall }: { ofCall: boolean },
): Dimension<Range> {
  return {
    ofCall,
    fits: (range, call, facts) => {
      const figure = measure(call, facts);
      return figure !== undefined && inRange(range, figure);
    },
    within: isWithin,
    apart: areApart,
  };
}

export function inRange(range: Range, figure: number): boolean {
  return figure >= low(range) && figure <= high(range);
}

export function isWithin(inner: Range, outer: Range): boolean {
  return low(inner) >= low(outer) && high(inner) <= high(outer);
}

export function areApart(one: Range, other: Range): boolean {
  return high(one) < low(other) || high(other) < low(one);
}

function low({ from = 0 }: Range): number {
  return from;
}

function high({ to = Number.POSITIVE_INFINITY }: Range): number {
  return to;
}

/** From one time of day until another, on the clock of the place; past midnight where it ends before it begins. */
export interface Hours {
  readonly from: string;
  readonly until: string;
}

export const hoursSchema = z
  .strictObject({ from: timeField('From'), until: timeField('Until') })
  .refine(({ from, until }) => from !== until, 'begins when it ends. Give two times of day');

/** Calls that start or end within some hours of the day. */
export function byHours(minuteOfDay: (call: Call) => number): Dimension<Hours> {
  return {
    ofCall: true,
    fits: (wanted, call) =>
      call !== undefined && after(startOf(wanted), minuteOfDay(call)) < lengthOf(wanted),
    within: (inner, outer) => after(startOf(outer), startOf(inner)) + lengthOf(inner) <= lengthOf(outer),
    apart: (one, other) =>
      after(startOf(one), startOf(other)) >= lengthOf(one) &&
      after(startOf(other), startOf(one)) >= lengthOf(other),
  };
}

const MINUTES_A_DAY = 1440;

function after(from: number, minuteOfDay: number): number {
  return (minuteOfDay - from + MINUTES_A_DAY) % MINUTES_A_DAY;
}

function startOf({ from }: Hours): number {
  return minuteOf(from);
}

function lengthOf({ from, until }: Hours): number {
  return after(minuteOf(from), minuteOf(until));
}

function minuteOf(text: string): number {
  const time = readTime(text);
  return refused(time) ? 0 : time.hour * 60 + time.minute;
}
