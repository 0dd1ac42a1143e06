// What a clause applies to: lists of words along a few dimensions. All named dimensions must fit; within one,
// any of its words will do, or any figure of its range.

import { dayAt, dayNumber, type Temporal, WEEKDAYS, weekWithin, whenOf } from '@colla/calendar';
import { CALL_KINDS, type Call, REASONS, type Who } from '@colla/hours';
import { z } from 'zod';
import { byDates, datesSchema } from './dates.ts';
import { byHours, byRange, byWords, type Dimension, hoursSchema, rangeField } from './dimension.ts';
import { byDistance, distanceSchema } from './distance.ts';
import type { Facts } from './facts.ts';
import { counts } from './item.ts';
import { byNth, nthSchema } from './nth.ts';
import { termOf } from './term.ts';

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
  dates: datesSchema.optional().meta({ title: 'Blocks of dates' }),
  hours: hoursSchema.optional().meta({ title: 'Calls that start between' }),
  ends: hoursSchema.optional().meta({ title: 'Calls that end between' }),
  minutes: rangeField('Calls of this length', 'minutes'),
  nth: nthSchema.optional().meta({ title: 'Which of its kind' }),
  sameDayAs: z
    .array(z.enum(CALL_KINDS))
    .min(1)
    .readonly()
    .optional()
    .meta({ title: 'On the day of another call of this kind' }),
  pause: rangeField('Minutes since the call before it ended', 'minutes'),
  places: words.optional().meta({ title: 'Places' }),
  terms: words.optional().meta({ title: 'Terms' }),
  termWeeks: rangeField('Weeks of the term', 'count'),
  weeks: rangeField('Weeks of the engagement', 'count'),
  daysAhead: rangeField('Asked for this many days ahead', 'days'),
  askedOn: datesSchema.optional().meta({ title: 'Asked for in these blocks of dates' }),
  reasons: z.array(z.enum(REASONS)).min(1).readonly().optional().meta({ title: 'Fallen for' }),
  noticeHours: rangeField('Fallen with this much notice (hours)', 'count'),
  levels: words.optional().meta({ title: 'Level' }),
  instruments: words.optional().meta({ title: 'Instrument or voice' }),
  study: words.optional().meta({ title: 'Course of study' }),
  memberships: words.optional().meta({ title: 'Membership' }),
  pianists: words.optional().meta({ title: 'Class of pianist' }),
  circumstances: words.optional().meta({ title: 'Circumstances' }),
  difficulties: words.optional().meta({ title: 'A work of this difficulty' }),
  music: rangeField('Minutes of music', 'minutes'),
  soFar: rangeField('Engagements before it this season', 'count'),
  sharers: rangeField('Soloists who share it', 'count'),
  callsInAll: rangeField('Calls of the engagement', 'count'),
  minutesInAll: rangeField('Time of the engagement (minutes)', 'minutes'),
  absences: rangeField('Calls the pianist missed', 'count'),
  cancellations: rangeField('Calls the payer let fall', 'count'),
  distance: distanceSchema.optional().meta({ title: 'Farthest journey' }),
});
export type Selector = z.output<typeof selectorSchema>;

/** What may be asked along each dimension. */
export type Asking = { readonly [Name in keyof Selector]-?: NonNullable<Selector[Name]> };
export type DimensionName = keyof Asking;
type Dimensions = { readonly [Name in DimensionName]: Dimension<Asking[Name]> };

const ofCall = { ofCall: true, single: true };
const ofWhole = { ofCall: false, single: true };

/** The dimensions along which the trade tells one case from another. A new one is its field, its line here and its words. */
export const dimensions: Dimensions = {
  calls: byWords((call) => [call?.kind], ofCall),
  labels: byWords((call) => [call?.label], ofCall),
  days: byWords((call, facts) => (call ? daysOf(call, facts) : []), { ofCall: true, single: weekdaysOnly }),
  dates: byDates((call) => call && dayAt(whenOf(call.planned).dayNumber), { ofCall: true }),
  hours: byHours(({ planned }) => whenOf(planned).minuteOfDay),
  ends: byHours(({ planned: { end } }) => end.hour * 60 + end.minute),
  minutes: byRange((call) => call && whenOf(call.planned).minutes, { ofCall: true }),
  nth: byNth,
  sameDayAs: byWords((call, facts) => (call ? othersThatDay(call, facts) : []), {
    ofCall: true,
    single: false,
  }),
  pause: byRange((call, facts) => call && pauseBefore(call, facts), { ofCall: true }),
  places: byWords((call) => [call?.place], ofCall),
  terms: byWords((call, facts) => [call && termOf(call, facts)?.name], ofCall),
  termWeeks: byRange((call, facts) => call && weekOfTerm(call, facts), { ofCall: true }),
  weeks: byRange((call, facts) => call && weekOfEngagement(call, facts), { ofCall: true }),
  daysAhead: byRange((call, facts) => call && daysAhead(call, facts), { ofCall: true }),
  askedOn: byDates((_, facts) => askedDay(facts)?.toString(), { ofCall: false }),
  reasons: byWords((call) => [call && reasonOf(call)], ofCall),
  noticeHours: byRange((call) => call && noticeHours(call), { ofCall: true }),
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
  sharers: byRange((_, { sharers }) => sharers, { ofCall: false }),
  callsInAll: byRange((_, facts) => asAgreed(facts).length, { ofCall: false }),
  minutesInAll: byRange((_, facts) => minutesPlanned(facts), { ofCall: false }),
  absences: byRange((_, facts) => letFallBy('pianist', facts), { ofCall: false }),
  cancellations: byRange((_, facts) => letFallBy('payer', facts), { ofCall: false }),
  distance: byDistance,
};

/** A day is one weekday only; any weekday may be a public holiday. */
function weekdaysOnly(days: readonly string[]): boolean {
  return !days.includes('public holiday');
}

function daysOf(call: Call, facts: Facts): string[] {
  const { weekday, dayNumber: on } = whenOf(call.planned);
  return facts.holidays.has(dayAt(on)) ? [weekday, 'public holiday'] : [weekday];
}

/** The week of its term in which a call is: the first is the one with the term's first day. */
function weekOfTerm(call: Call, facts: Facts): number | undefined {
  const term = termOf(call, facts);
  return term && weekWithin(whenOf(call.planned).dayNumber, dayNumber(term.from.toString()));
}

/** The week of its engagement in which a call is: the first is the one with the first call, as agreed. */
function weekOfEngagement(call: Call, facts: Facts): number {
  const days = [call, ...asAgreed(facts)].map(({ planned }) => whenOf(planned).dayNumber);
  return weekWithin(whenOf(call.planned).dayNumber, Math.min(...days));
}

/** Whole days of the place between the asking (the agreement, where nobody noted it) and the call. */
function daysAhead({ planned }: Call, { askedAt, agreedAt }: Facts): number | undefined {
  const asked = askedAt ?? agreedAt;
  if (!asked) return undefined;
  const on = asked.withTimeZone(planned.start.timeZoneId).toPlainDate();
  return Math.max(0, whenOf(planned).dayNumber - dayNumber(on.toString()));
}

/** The day of the asking (the agreement, where nobody noted it), on the calendar it was noted in. */
function askedDay({ askedAt, agreedAt }: Facts): Temporal.PlainDate | undefined {
  return (askedAt ?? agreedAt)?.toPlainDate();
}

/** The kinds of the other calls of a call's day, as agreed. */
function othersThatDay(call: Call, facts: Facts): string[] {
  const day = whenOf(call.planned).dayNumber;
  return asAgreed(facts).flatMap(({ id, kind, planned }) =>
    id !== call.id && whenOf(planned).dayNumber === day ? [kind] : [],
  );
}

/** Minutes from the end of the last call that began before it, as planned and agreed; none for the first. */
function pauseBefore(call: Call, facts: Facts): number | undefined {
  const { at } = whenOf(call.planned);
  const ends = asAgreed(facts).flatMap(({ planned }) =>
    whenOf(planned).at < at ? [planned.end.epochMilliseconds] : [],
  );
  return ends.length === 0 ? undefined : Math.max(0, Math.floor((at - Math.max(...ends)) / 60_000));
}

/** Why a call fell; undefined for one that did not. */
function reasonOf({ standing }: Call): string | undefined {
  return standing.is === 'cancelled' || standing.is === 'missed' ? standing.reason : undefined;
}

/** Whole hours between the word that a call falls and its start; none where no word came or it came later. */
function noticeHours({ standing, planned }: Call): number | undefined {
  if (standing.is === 'missed') return 0;
  if (standing.is !== 'cancelled') return undefined;
  return Math.max(0, Math.floor((whenOf(planned).at - standing.at.epochMilliseconds) / 3_600_000));
}

/** What was agreed, whatever fell of it since: a rate for many does not change when one of them is cancelled. */
function asAgreed({ calls, offered }: Facts): Call[] {
  return calls.filter((call) => counts(call, offered));
}

function minutesPlanned(facts: Facts): number {
  return asAgreed(facts).reduce((sum, { planned }) => sum + whenOf(planned).minutes, 0);
}

/** Calls that were agreed and that one side let fall. */
function letFallBy(side: Who, facts: Facts): number {
  return asAgreed(facts).filter(({ standing }) => 'by' in standing && standing.by === side).length;
}

/** Minutes of music in the programme. */
export function minutesOfMusic({ programme }: Facts): number {
  return programme.reduce((sum, { minutes }) => sum + minutes, 0);
}
