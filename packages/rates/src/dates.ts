// Blocks of dates: the same days of each year (from 15 December until 6 January), or days dated once.

import { dayNumber, readDay } from '@colla/calendar';
import type { Call } from '@colla/hours';
import { refused } from '@colla/refusal';
import { z } from 'zod';
import type { Dimension } from './dimension.ts';
import type { Facts } from './facts.ts';

/** Both days belong to it. `12-15` comes back each year, `2026-12-15` does not; both ends are written alike. */
export interface Block {
  readonly from: string;
  readonly until: string;
}

const dateField = (title: string) =>
  z
    .string()
    .refine(isDate, 'is not a date; write it as 12-15 for each year, or as 2026-12-15 for once')
    .meta({ title, unit: 'date' });

const DAYS_OF_A_LEAP_YEAR = 366;

export const datesSchema = z
  .array(
    z
      .strictObject({ from: dateField('From'), until: dateField('Until') })
      .refine(
        ({ from, until }) => from.length === until.length,
        'has a year at one end only. Give both ends a year, or neither',
      )
      .refine(
        (block) => yearly(block) || block.from <= block.until,
        'ends before it begins. Exchange its two ends',
      ),
  )
  .min(1)
  .max(20)
  .readonly();

function isDate(text: string): boolean {
  return /^(\d{4}-)?\d\d-\d\d$/.test(text) && !refused(readDay(inFull(text)));
}

/** A day without a year in one that has every day, the 29 February too. */
function inFull(text: string): string {
  return text.length === 5 ? `2024-${text}` : text;
}

/** A day, as `2026-12-15`, that lies in one of the blocks; what has no such day fits none. */
export function byDates(
  dayOf: (call: Call | undefined, facts: Facts) => string | undefined,
  { ofCall }: { ofCall: boolean },
): Dimension<readonly Block[]> {
  return {
    ofCall,
    fits: (blocks, call, facts) => {
      const day = dayOf(call, facts);
      return day !== undefined && blocks.some((block) => holds(block, day));
    },
    within: (inner, outer) => inner.every((block) => outer.some((other) => isWithin(block, other))),
    apart: (one, other) => one.every((block) => other.every((another) => areApart(block, another))),
  };
}

function yearly({ from }: Block): boolean {
  return from.length === 5;
}

/** Dates written alike are in the order of their texts; a year's block may run over its end. */
function holds(block: Block, day: string): boolean {
  const { from, until } = block;
  const on = yearly(block) ? day.slice(5) : day;
  return from <= until ? from <= on && on <= until : on >= from || on <= until;
}

function isWithin(inner: Block, outer: Block): boolean {
  if (!yearly(outer)) return !yearly(inner) && outer.from <= inner.from && inner.until <= outer.until;
  return isAllYear(outer) || daysAfter(outer, inner) + lengthOf(inner) <= lengthOf(outer);
}

/** Whether it has every day, and so holds what runs over its ends. */
function isAllYear(yearly: Block): boolean {
  return lengthOf(yearly) === DAYS_OF_A_LEAP_YEAR - 1;
}

function areApart(one: Block, other: Block): boolean {
  if (!yearly(one) && !yearly(other)) return one.until < other.from || other.until < one.from;
  return daysAfter(one, other) > lengthOf(one) && daysAfter(other, one) > lengthOf(other);
}

/** How many days of the year after the beginning of one block the other begins. */
function daysAfter(one: Block, other: Block): number {
  return between(one.from, other.from);
}

/** Days from the first to the last; of a dated block that runs on for years, all of them. */
function lengthOf(block: Block): number {
  const { from, until } = block;
  const round = between(from, until);
  return yearly(block) ? round : Math.max(round, dayNumber(until) - dayNumber(from));
}

function between(from: string, until: string): number {
  return (dayOfYear(until) - dayOfYear(from) + DAYS_OF_A_LEAP_YEAR) % DAYS_OF_A_LEAP_YEAR;
}

function dayOfYear(text: string): number {
  return dayNumber(inFull(text.slice(-5)));
}

/** “from 15 December until 6 January”, “on 24 December”, “from 28 March 2027 until 5 April 2027”. */
export function sayBlock({ from, until }: Block): string {
  return from === until ? `on ${sayDate(from)}` : `from ${sayDate(from)} until ${sayDate(until)}`;
}

function sayDate(text: string): string {
  const [month, day] = text.slice(-5).split('-').map(Number);
  const year = text.length === 5 ? '' : ` ${text.slice(0, 4)}`;
  return `${day} ${MONTHS[(month ?? 1) - 1]}${year}`;
}

const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];
