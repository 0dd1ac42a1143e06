// What a clause applies to: lists of words along a few dimensions. All named dimensions must fit; within one,
// any of its words will do, or any figure of its range.

import { CALL_KINDS, type Call } from '@colla/hours';
import { z } from 'zod';
import {
  byHours,
  byRange,
  byWords,
  type Dimension,
  hoursSchema,
  type Range,
  rangeField,
} from './dimension.ts';
import type { Facts } from './facts.ts';
import { termOf } from './term.ts';
import type { Voice } from './voice.ts';
import { dayText, mondayOf, numberOf, WEEKDAYS, whenOf } from './when.ts';

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
  hours: hoursSchema.optional().meta({ title: 'Calls that start between' }),
  minutes: rangeField('Calls of this length', 'minutes'),
  places: words.optional().meta({ title: 'Places' }),
  terms: words.optional().meta({ title: 'Terms' }),
  termWeeks: rangeField('Weeks of the term', 'count'),
  daysAhead: rangeField('Asked for this many days ahead', 'days'),
  levels: words.optional().meta({ title: 'Level' }),
  instruments: words.optional().meta({ title: 'Instrument or voice' }),
  study: words.optional().meta({ title: 'Course of study' }),
  memberships: words.optional().meta({ title: 'Membership' }),
  pianists: words.optional().meta({ title: 'Class of pianist' }),
  circumstances: words.optional().meta({ title: 'Circumstances' }),
  difficulties: words.optional().meta({ title: 'A work of this difficulty' }),
  music: rangeField('Minutes of music', 'minutes'),
  soFar: rangeField('Engagements before it this season', 'count'),
});
export type Selector = z.output<typeof selectorSchema>;

/** What may be asked along each dimension. */
type Asking = { readonly [Name in keyof Selector]-?: NonNullable<Selector[Name]> };
type DimensionName = keyof Asking;
type Dimensions = { readonly [Name in DimensionName]: Dimension<Asking[Name]> };

const ofCall = { ofCall: true, single: true };
const ofWhole = { ofCall: false, single: true };

/** The dimensions along which the trade tells one case from another. A new one is its field, its line here and its words. */
export const dimensions: Dimensions = {
  calls: byWords((call) => [call?.kind], ofCall),
  labels: byWords((call) => [call?.label], ofCall),
  days: byWords((call, facts) => (call ? daysOf(call, facts) : []), { ofCall: true, single: weekdaysOnly }),
  hours: byHours,
  minutes: byRange((call) => call && whenOf(call.planned).minutes, { ofCall: true }),
  places: byWords((call) => [call?.place], ofCall),
  terms: byWords((call, facts) => [call && termOf(call, facts)?.name], ofCall),
  termWeeks: byRange((call, facts) => call && weekOfTerm(call, facts), { ofCall: true }),
  daysAhead: byRange((call, facts) => call && daysAhead(call, facts), { ofCall: true }),
  levels: byWords((_, { soloist }) => [soloist.level], ofWhole),
  instruments: byWords((_, { soloist }) => [soloist.instrument], ofWhole),
  study: byWords((_, { soloist }) => [soloist.study], ofWhole),
  memberships: byWords((_, { soloist }) => [soloist.membership], ofWhole),
  pianists: byWords((_, { pianistClass }) => [pianistClass], ofWhole),
  circumstances: byWords((_, { circumstances }) => circumstances, { ofCall: false, single: false }),
  difficulties: byWords((_, { programme }) => programme.map(({ difficulty }) => difficulty), {
    ofCall: false,
    single: false,
  }),
  music: byRange((_, facts) => minutesOfMusic(facts), { ofCall: false }),
  soFar: byRange((_, { soFar }) => soFar, { ofCall: false }),
};
const names = Object.keys(dimensions) as DimensionName[];

/** A day is one weekday only; any weekday may be a public holiday. */
function weekdaysOnly(days: readonly string[]): boolean {
  return !days.includes('public holiday');
}

/** Whether a call of an engagement fits. */
export function fitsCall(selector: Selector, call: Call, facts: Facts): boolean {
  for (const { fits } of askedBy(selector)) if (!fits(call, facts)) return false;
  return true;
}

/** Whether an engagement as a whole fits; what the selector asks about calls is left aside. */
export function fitsEngagement(selector: Selector, facts: Facts): boolean {
  for (const { ofCall, fits } of askedBy(selector)) if (!ofCall && !fits(undefined, facts)) return false;
  return true;
}

/** Whether a selector asks anything about calls, and not only about the engagement as a whole. */
export function asksOfCalls(selector: Selector): boolean {
  return askedBy(selector).some(({ ofCall }) => ofCall);
}

interface Asked {
  readonly ofCall: boolean;
  readonly fits: (call: Call | undefined, facts: Facts) => boolean;
}

const asked = new WeakMap<Selector, readonly Asked[]>();

/** What a selector asks, found once for each selector. */
function askedBy(selector: Selector): readonly Asked[] {
  const known = asked.get(selector);
  if (known) return known;
  const found = names.flatMap((name) => askedAlong(name, selector));
  asked.set(selector, found);
  return found;
}

function askedAlong<Name extends DimensionName>(name: Name, selector: Selector): Asked[] {
  const wanted = wantedOf(selector, name);
  if (wanted === undefined) return [];
  const { ofCall, fits } = dimensions[name];
  return [{ ofCall, fits: (call, facts) => fits(wanted, call, facts) }];
}

function wantedOf<Name extends DimensionName>(selector: Selector, name: Name): Asking[Name] | undefined {
  const asking: { readonly [Of in DimensionName]?: Asking[Of] | undefined } = selector;
  return asking[name];
}

function daysOf(call: Call, facts: Facts): string[] {
  const { weekday, dayNumber } = whenOf(call.planned);
  return facts.holidays.has(dayText(dayNumber)) ? [weekday, 'public holiday'] : [weekday];
}

/** The week of its term in which a call is: the first is the one with the term's first day. */
function weekOfTerm(call: Call, facts: Facts): number | undefined {
  const term = termOf(call, facts);
  if (!term) return undefined;
  const { dayNumber } = whenOf(call.planned);
  return (mondayOf(dayNumber) - mondayOf(numberOf(term.from))) / 7 + 1;
}

/** Whole days of the place between the asking (the agreement, where nobody noted it) and the call. */
function daysAhead({ planned }: Call, { askedAt, agreedAt }: Facts): number | undefined {
  const asked = askedAt ?? agreedAt;
  if (!asked) return undefined;
  const on = asked.withTimeZone(planned.start.timeZoneId).toPlainDate();
  return Math.max(0, whenOf(planned).dayNumber - numberOf(on));
}

/** Minutes of music in the programme. */
export function minutesOfMusic({ programme }: Facts): number {
  return programme.reduce((sum, { minutes }) => sum + minutes, 0);
}

/**
 * Whether `a` asks for all that `b` asks for, and more: the rule by which one of two clauses goes before the
 * other. “Rehearsals on Sundays” is closer than “rehearsals”.
 */
export function closer(a: Selector, b: Selector): boolean {
  return within(a, b) && !within(b, a);
}

function within(a: Selector, b: Selector): boolean {
  return names.every((name) => withinAlong(name, a, b));
}

function withinAlong<Name extends DimensionName>(name: Name, a: Selector, b: Selector): boolean {
  const [inner, outer] = [wantedOf(a, name), wantedOf(b, name)];
  return outer === undefined || (inner !== undefined && dimensions[name].within(inner, outer));
}

/** Whether no call can fit both. */
export function apart(a: Selector, b: Selector): boolean {
  return names.some((name) => apartAlong(name, a, b));
}

function apartAlong<Name extends DimensionName>(name: Name, a: Selector, b: Selector): boolean {
  const [one, other] = [wantedOf(a, name), wantedOf(b, name)];
  return one !== undefined && other !== undefined && dimensions[name].apart(one, other);
}

/** The calls a selector means: “rehearsals and lessons on Sundays (cello)”; `any` where it asks for no kind. */
export function sayCalls(selector: Selector, voice: Voice, any = 'all calls'): string {
  const kinds = selector.calls ? voice.list(selector.calls.map(plural)) : any;
  return kinds + sayConditions(selector, voice);
}

/** The conditions of a selector, as they follow a subject; empty where there are none. */
export function sayConditions(selector: Selector, voice: Voice): string {
  const whole = sayWhole(selector, voice);
  return sayOfCalls(selector, voice) + (whole.length > 0 ? ` (${whole.join('; ')})` : '');
}

function sayOfCalls(selector: Selector, voice: Voice): string {
  const { labels, days, hours, minutes, places, terms, termWeeks, daysAhead } = selector;
  const parts = [
    minutes && `of ${sayRange(minutes, 'minute')}`,
    labels && `named ${voice.either(labels.map((label) => `“${label}”`))}`,
    days && `on ${voice.either(days.map(daysInWords))}`,
    hours && `that start from ${hours.from} until ${hours.until}`,
    places && `in ${voice.either(places)}`,
    termWeeks && `in week ${sayRange(termWeeks)} of the term`,
    terms && `in ${voice.either(terms)}`,
    daysAhead && `asked for ${sayRange(daysAhead, 'day')} ahead`,
  ];
  return parts
    .filter((part) => part !== undefined)
    .map((part) => ` ${part}`)
    .join('');
}

function sayWhole(selector: Selector, voice: Voice): string[] {
  const { levels, instruments, study, memberships, pianists, circumstances, difficulties } = selector;
  const words = [levels, instruments, study, memberships, pianists?.map((word) => `${word} pianist`)];
  const asked = [...words, circumstances, difficulties?.map((word) => `a ${word} work`)];
  return [
    ...asked.filter((part) => part !== undefined).map((part) => voice.either(part)),
    ...(selector.music ? [`${sayRange(selector.music, 'minute')} of music`] : []),
    ...(selector.soFar ? [`${sayRange(selector.soFar, 'engagement')} before it this season`] : []),
  ];
}

/** “up to 20 minutes”, “21 minutes or more”, “10 to 20 minutes”, “3”. */
function sayRange({ from, to }: Range, unit?: string): string {
  const of = (figure: number) => (unit ? `${figure} ${unit}${figure === 1 ? '' : 's'}` : String(figure));
  if (from === undefined) return `up to ${of(to ?? 0)}`;
  if (to === undefined) return `${of(from)} or more`;
  return from === to ? of(to) : `${from} to ${of(to)}`;
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
