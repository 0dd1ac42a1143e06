// Phrases from which the sentences of clauses are made: which calls, under which conditions, what some clauses charge.

import type { Reason } from '@colla/hours';
import { sayBlock } from './dates.ts';
import type { Range } from './dimension.ts';
import { sayDistance } from './distance.ts';
import type { Nth } from './nth.ts';
import type { Selector } from './selector.ts';
import type { Voice } from './voice.ts';

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
  const { labels, days, dates, hours, ends, minutes, nth, places, terms, termWeeks, weeks, daysAhead } =
    selector;
  const { reasons, noticeHours, sameDayAs, pause } = selector;
  const parts = [
    minutes && `of ${sayRange(minutes, 'minute')}`,
    labels && `named ${voice.either(labels.map((label) => `“${label}”`))}`,
    days && `on ${voice.either(days.map(daysInWords))}`,
    dates && voice.either(dates.map(sayBlock)),
    hours && `that start from ${hours.from} until ${hours.until}`,
    ends && `that end from ${ends.from} until ${ends.until}`,
    nth && sayNth(nth),
    sameDayAs && `on the day of ${oneOf(sameDayAs, voice)}`,
    pause && `after a pause of ${sayRange(pause, 'minute')}`,
    places && `in ${voice.either(places)}`,
    termWeeks && `in week ${sayRange(termWeeks)} of the term`,
    terms && `in ${voice.either(terms)}`,
    weeks && `in week ${sayRange(weeks)} of the engagement`,
    daysAhead && `asked for ${sayRange(daysAhead, 'day')} ahead`,
    reasons && `for ${voice.either(reasons.map((reason) => REASON_WORDS[reason]))}`,
    noticeHours && `with ${sayRange(noticeHours, 'hour')} of notice`,
  ];
  return parts
    .filter((part) => part !== undefined)
    .map((part) => ` ${part}`)
    .join('');
}

function sayWhole(selector: Selector, voice: Voice): string[] {
  const { levels, instruments, study, memberships, pianists, circumstances, difficulties } = selector;
  const words = [levels, instruments, study, memberships, pianists?.map((word) => `${word} pianist`)];
  const asked = [...words, circumstances, difficulties?.map((word) => `${withArticle(word)} work`)];
  return [
    ...asked.filter((part) => part !== undefined).map((part) => voice.either(part)),
    ...(selector.music ? [`${sayRange(selector.music, 'minute')} of music`] : []),
    ...(selector.soFar ? [`${sayRange(selector.soFar, 'engagement')} before it this season`] : []),
    ...(selector.askedOn ? [`asked for ${voice.either(selector.askedOn.map(sayBlock))}`] : []),
    ...(selector.sharers ? [sayRange(selector.sharers, 'soloist')] : []),
    ...(selector.callsInAll ? [`${sayRange(selector.callsInAll, 'call')} in all`] : []),
    ...(selector.minutesInAll ? [`${sayRange(selector.minutesInAll, 'minute')} in all`] : []),
    ...(selector.absences ? [`${sayRange(selector.absences, 'absence')} of the pianist`] : []),
    ...(selector.cancellations ? [sayRange(selector.cancellations, 'cancellation')] : []),
    ...(selector.distance ? [sayDistance(selector.distance)] : []),
  ];
}

/** “from the second of each day on”, “up to the third of the engagement”. */
function sayNth({ from, to, each }: Nth): string {
  const of = each === 'engagement' ? 'of the engagement' : `of each ${each}`;
  if (from === undefined) return `up to the ${ordinal(to ?? 1)} ${of}`;
  if (to === undefined) return `from the ${ordinal(from)} ${of} on`;
  return from === to
    ? `that are the ${ordinal(from)} ${of}`
    : `from the ${ordinal(from)} to the ${ordinal(to)} ${of}`;
}

/** “first”, “second”, “12th”. */
export function ordinal(place: number): string {
  return ORDINALS[place - 1] ?? `${place}${ENDINGS[ordinals.select(place)] ?? 'th'}`;
}

const ORDINALS = [
  'first',
  'second',
  'third',
  'fourth',
  'fifth',
  'sixth',
  'seventh',
  'eighth',
  'ninth',
  'tenth',
];
const ordinals = new Intl.PluralRules('en', { type: 'ordinal' });
const ENDINGS: Readonly<Record<string, string>> = { one: 'st', two: 'nd', few: 'rd' };

/** “up to 20 minutes”, “21 minutes or more”, “10 to 20 minutes”, “3”. */
export function sayRange({ from, to }: Range, unit?: string): string {
  const of = (figure: number) => (unit ? `${figure} ${unit}${figure === 1 ? '' : 's'}` : String(figure));
  if (from === undefined) return `up to ${of(to ?? 0)}`;
  if (to === undefined) return `${of(from)} or more`;
  return from === to ? of(to) : `${from} to ${of(to)}`;
}

/** Why a call falls, as it follows “for”. */
export const REASON_WORDS: Readonly<Record<Reason, string>> = {
  illness: 'illness',
  emergency: 'an emergency',
  'force majeure': 'force majeure',
  forgotten: 'forgetting',
  other: 'any other reason',
};

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
  return withArticle(voice.either(kinds.map((kind) => (kind === 'other' ? 'other call' : kind))));
}

function withArticle(words: string): string {
  return `${/^[aeiou]/.test(words) ? 'an' : 'a'} ${words}`;
}

/** The first letter made a capital. */
export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
