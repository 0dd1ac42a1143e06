// What a clause applies to: lists of words along a few dimensions. All named dimensions must fit; within one,
// any of its words will do.

import { CALL_KINDS, type Call } from '@colla/hours';
import { z } from 'zod';
import type { Facts } from './facts.ts';
import type { Voice } from './voice.ts';
import { dayText, WEEKDAYS, whenOf } from './when.ts';

interface Dimension {
  /** The words a call or its engagement shows along this dimension. */
  readonly shows: (call: Call | undefined, facts: Facts) => readonly (string | undefined)[];
  /** One fact, one word: two lists without a word in common can then never both fit. */
  readonly single: boolean;
  /** Whether it asks about the call (or only about the engagement as a whole). */
  readonly ofCall: boolean;
}

/** The dimensions along which the trade tells one case from another. A new one is one line here and its words. */
export const dimensions = {
  calls: { shows: (call) => [call?.kind], single: true, ofCall: true },
  labels: { shows: (call) => [call?.label], single: true, ofCall: true },
  days: { shows: (call, facts) => (call ? daysOf(call, facts) : []), single: false, ofCall: true },
  levels: { shows: (_, facts) => [facts.soloist.level], single: true, ofCall: false },
  instruments: { shows: (_, facts) => [facts.soloist.instrument], single: true, ofCall: false },
  study: { shows: (_, facts) => [facts.soloist.study], single: true, ofCall: false },
  pianists: { shows: (_, facts) => [facts.pianistClass], single: true, ofCall: false },
  circumstances: { shows: (_, facts) => facts.circumstances, single: false, ofCall: false },
} as const satisfies Record<string, Dimension>;

type DimensionName = keyof typeof dimensions;
const names = Object.keys(dimensions) as DimensionName[];

const words = z.array(z.string().min(1).max(60)).min(1).max(40).readonly();

/** `{}` applies to everything. */
export const selectorSchema = z.strictObject({
  calls: z.array(z.enum(CALL_KINDS)).min(1).readonly().optional().meta({ title: 'Kinds of call' }),
  labels: words.optional().meta({ title: 'Calls named' }),
  days: z
    .array(z.enum([...WEEKDAYS, 'public holiday']))
    .min(1)
    .readonly()
    .optional()
    .meta({ title: 'Days' }),
  levels: words.optional().meta({ title: 'Level' }),
  instruments: words.optional().meta({ title: 'Instrument or voice' }),
  study: words.optional().meta({ title: 'Course of study' }),
  pianists: words.optional().meta({ title: 'Class of pianist' }),
  circumstances: words.optional().meta({ title: 'Circumstances' }),
});
export type Selector = z.output<typeof selectorSchema>;

/** Whether a call of an engagement fits. */
export function fitsCall(selector: Selector, call: Call, facts: Facts): boolean {
  for (const { dimension, words } of askedBy(selector))
    if (!showsOneOf(words, dimension.shows(call, facts))) return false;
  return true;
}

/** Whether an engagement as a whole fits; what the selector asks about calls is left aside. */
export function fitsEngagement(selector: Selector, facts: Facts): boolean {
  for (const { dimension, words } of askedBy(selector))
    if (!dimension.ofCall && !showsOneOf(words, dimension.shows(undefined, facts))) return false;
  return true;
}

/** Whether a selector asks anything about calls, and not only about the engagement as a whole. */
export function asksOfCalls(selector: Selector): boolean {
  return askedBy(selector).some(({ dimension }) => dimension.ofCall);
}

interface Asked {
  readonly dimension: Dimension;
  readonly words: ReadonlySet<string>;
}

const asked = new WeakMap<Selector, readonly Asked[]>();

/** The dimensions along which a selector asks anything, found once for each selector. */
function askedBy(selector: Selector): readonly Asked[] {
  const known = asked.get(selector);
  if (known) return known;
  const found = names.flatMap((name) => {
    const words: readonly string[] | undefined = selector[name];
    return words ? [{ dimension: dimensions[name], words: new Set(words) }] : [];
  });
  asked.set(selector, found);
  return found;
}

function showsOneOf(words: ReadonlySet<string>, shown: readonly (string | undefined)[]): boolean {
  for (const word of shown) if (word !== undefined && words.has(word)) return true;
  return false;
}

function daysOf(call: Call, facts: Facts): string[] {
  const { weekday, dayNumber } = whenOf(call.planned);
  return facts.holidays.has(dayText(dayNumber)) ? [weekday, 'public holiday'] : [weekday];
}

/**
 * Whether `a` asks for all that `b` asks for, and more: the rule by which one of two clauses goes before the
 * other. “Rehearsals on Sundays” is closer than “rehearsals”.
 */
export function closer(a: Selector, b: Selector): boolean {
  return within(a, b) && !within(b, a);
}

function within(a: Selector, b: Selector): boolean {
  return names.every((name) => {
    const outer: readonly string[] | undefined = b[name];
    const inner: readonly string[] | undefined = a[name];
    return !outer || (inner?.every((word) => outer.includes(word)) ?? false);
  });
}

/** Whether no call can fit both. */
export function apart(a: Selector, b: Selector): boolean {
  return names.some((name) => {
    const one: readonly string[] | undefined = a[name];
    const other: readonly string[] | undefined = b[name];
    if (!one || !other || one.some((word) => other.includes(word))) return false;
    return name === 'days' ? weekdaysOnly(one) && weekdaysOnly(other) : dimensions[name].single;
  });
}

/** A day is one weekday only; any weekday may be a public holiday. */
function weekdaysOnly(days: readonly string[]): boolean {
  return !days.includes('public holiday');
}

/** The calls a selector means: “rehearsals and lessons on Sundays (cello)”; `any` where it asks for no kind. */
export function sayCalls(selector: Selector, voice: Voice, any = 'all calls'): string {
  const kinds = selector.calls ? voice.list(selector.calls.map(plural)) : any;
  return kinds + sayConditions(selector, voice);
}

/** The conditions of a selector, as they follow a subject; empty where there are none. */
export function sayConditions(selector: Selector, voice: Voice): string {
  const { labels, days, levels, instruments, study, pianists, circumstances } = selector;
  const named = labels ? ` named ${voice.either(labels.map((label) => `“${label}”`))}` : '';
  const on = days ? ` on ${voice.either(days.map(daysInWords))}` : '';
  const engagement = [levels, instruments, study, pianists?.map((word) => `${word} pianist`), circumstances]
    .filter((part) => part !== undefined)
    .map((part) => voice.either(part));
  return named + on + (engagement.length > 0 ? ` (${engagement.join('; ')})` : '');
}

function daysInWords(day: string): string {
  return `${day === 'public holiday' ? day : capital(day)}s`;
}

/** What some clauses charge, by their names: “what “hours” and “premium” charge”; “everything” where none is named. */
export function sayCharges(named: readonly string[] | undefined, voice: Voice): string {
  if (!named) return 'everything';
  return `what ${voice.list(named.map((id) => `“${id}”`))} ${named.length > 1 ? 'charge' : 'charges'}`;
}

const PLURALS: Readonly<Record<string, string>> = {
  coaching: 'coaching sessions',
  jury: 'juries',
  class: 'classes',
  recording: 'recording sessions',
  'dress rehearsal': 'dress rehearsals',
  other: 'other calls',
};

/** More than one call of a kind: “juries”, “rehearsals”. */
export function plural(kind: string): string {
  return PLURALS[kind] ?? `${kind}s`;
}

/** One of a kind with its article: “a recital”, “an exam”, “a jury or audition”. */
export function oneOf(kinds: readonly string[], voice: Voice): string {
  const said = voice.either(kinds);
  return `${/^[aeiou]/.test(said) ? 'an' : 'a'} ${said}`;
}

/** The first letter made a capital. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
