// A scale by notice: how much is left to pay when word comes so long before, and who is told so in words.

import { deadline, inTime, type Notice, type Temporal } from '@colla/calendar';
import type { Currency } from '@colla/money';
import { z } from 'zod';
import { amountField, countField, shareField, timeField } from '../fields.ts';
import type { Owes } from '../verdict.ts';
import type { Voice } from '../voice.ts';

/** The parameters of a scale, to be spread into a clause's schema. */
export function scaleFields(currency: Currency) {
  const owes = z.discriminatedUnion('owes', [
    z.strictObject({ owes: z.literal('nothing') }),
    z.strictObject({ owes: z.literal('share'), share: shareField('Share') }),
    z.strictObject({ owes: z.literal('amount'), amount: amountField(currency, 'Amount') }),
    z.strictObject({ owes: z.literal('deposit') }),
    z.strictObject({ owes: z.literal('all') }),
  ]);
  return {
    clock: z
      .enum(['hours', 'days', 'working-days', 'clock'])
      .default('hours')
      .meta({ title: 'Notice counted in' }),
    exactly: z
      .enum(['in-time', 'too-late'])
      .default('in-time')
      .meta({ title: 'Notice of exactly that much is' }),
    scale: z
      .array(
        z.strictObject({
          before: countField('At least this much before'),
          time: timeField('By this time of day').optional(),
          owes: owes.meta({ title: 'Leaves to pay' }),
        }),
      )
      .max(12)
      .readonly()
      .meta({ title: 'Scale, the longest notice first' }),
    otherwise: owes.meta({ title: 'Any later' }),
    noShow: owes.optional().meta({ title: 'No word at all' }),
  };
}

interface Step {
  readonly before: number;
  readonly time?: string | undefined;
  readonly owes: Owes;
}

export interface Scale {
  readonly clock: 'hours' | 'days' | 'working-days' | 'clock';
  readonly exactly: 'in-time' | 'too-late';
  readonly scale: readonly Step[];
  readonly otherwise: Owes;
  readonly noShow?: Owes | undefined;
}

/** What word at `at` leaves to pay for what starts at `start`, in the zone of `start`; none of it is nothing. */
export function owedAt(
  of: Scale,
  at: Temporal.ZonedDateTime,
  start: Temporal.ZonedDateTime,
  holidays: ReadonlySet<string>,
): Owes {
  const inTimeFor = of.clock === 'hours' ? hoursAhead(of, at, start) : byItsClock(of, at, start, holidays);
  return plainly(of.scale.find(inTimeFor)?.owes ?? of.otherwise);
}

/** The instants at which the steps of a scale end for what starts at `start`. */
export function deadlines(
  of: Scale,
  start: Temporal.ZonedDateTime,
  holidays: ReadonlySet<string>,
): Temporal.ZonedDateTime[] {
  return of.scale.map((step) => deadline(noticeOf(of.clock, step), start, holidays));
}

function noticeOf(clock: Scale['clock'], { before, time = '00:00' }: Step): Notice {
  return clock === 'clock' ? { by: clock, before, time } : { by: clock, before };
}

/** Elapsed hours need no calendar. */
function hoursAhead({ exactly }: Scale, at: Temporal.ZonedDateTime, start: Temporal.ZonedDateTime) {
  const ahead = start.epochMilliseconds - at.epochMilliseconds;
  return ({ before }: Step) => {
    const spare = ahead - before * 3_600_000;
    return spare > 0 || (spare === 0 && exactly === 'in-time');
  };
}

function byItsClock(
  { clock, exactly }: Scale,
  at: Temporal.ZonedDateTime,
  start: Temporal.ZonedDateTime,
  holidays: ReadonlySet<string>,
) {
  return (step: Step) => inTime(at, start, { notice: noticeOf(clock, step), boundary: exactly, holidays });
}

/** A share or a sum of nothing is nothing: such a call draws on nothing and is priced by nothing. */
export function plainly(owes: Owes): Owes {
  const none = (owes.owes === 'share' && owes.share === 0) || (owes.owes === 'amount' && owes.amount === 0n);
  return none ? { owes: 'nothing' } : owes;
}

/** Everything a scale may leave to pay. */
export function owedEver({ scale, otherwise, noShow }: Scale): Owes[] {
  return [...scale.map(({ owes }) => owes), otherwise, ...(noShow ? [noShow] : [])];
}

/** Why the steps of a scale cannot stand together; empty where they can. */
export function scaleContradictions({ clock, exactly, scale }: Scale): string[] {
  if (exactly === 'too-late' && inWholeDays(clock))
    return [
      'Whole days end at midnight, and have no exact instant: leave out what notice of exactly that is.',
    ];
  return scale.flatMap((step, index) => {
    const next = scale[index + 1];
    if (next && !longer(step, next))
      return [
        `The scale must run from the longest notice to the shortest: ${step.before} stands before ${next.before}.`,
      ];
    if ((clock === 'clock') === (step.time !== undefined)) return [];
    return clock === 'clock'
      ? ['Notice by a time of day needs that time: give it as 20:00.']
      : ['A time of day goes with notice by a time of day only: leave it out, or count notice by the clock.'];
  });
}

function inWholeDays(clock: Scale['clock']): boolean {
  return clock === 'days' || clock === 'working-days';
}

/** Whether a step asks for more notice than the next: more days, or as many and an earlier hour. */
function longer(step: Step, next: Step): boolean {
  return step.before > next.before || (step.before === next.before && (step.time ?? '') < (next.time ?? ''));
}

/** Of so many minutes, hours are said in tenths; beyond them as days and hours. */
const LONG = 96 * 60;

/**
 * “30 h before the recital”, “7 days 15 h before the jury”, “5 days before the exam”, “after the rehearsal began”. What
 * is left of a minute is left out: 48 h are said of no less.
 */
export function sayNotice(
  clock: Scale['clock'],
  at: Temporal.ZonedDateTime,
  to: { start: Temporal.ZonedDateTime; kind: string },
  voice: Voice,
): string {
  const minutes = Math.floor((to.start.epochMilliseconds - at.epochMilliseconds) / 60_000);
  if (minutes < 0) return `after the ${to.kind} began`;
  return `${sayAhead(minutes)} before the ${to.kind}`;

  function sayAhead(minutes: number): string {
    if (minutes < 60) return `${minutes} min`;
    if (clock === 'hours' && minutes >= LONG) return sayLong(Math.floor(minutes / 60));
    if (clock === 'hours' || minutes < 48 * 60)
      return `${voice.number(String(Math.floor(minutes / 6) / 10))} h`;
    return sayDays(at.withTimeZone(to.start.timeZoneId).toPlainDate().until(to.start.toPlainDate()).days);
  }
}

function sayLong(hours: number): string {
  const rest = hours % 24;
  return `${sayDays(Math.floor(hours / 24))}${rest === 0 ? '' : ` ${rest} h`}`;
}

function sayDays(days: number): string {
  return days === 1 ? '1 day' : `${days} days`;
}

/** “nothing until 48 hours before, 50 % until it begins, and all of it later”; `to` where it has to be said before what. */
export function sayScale(of: Scale, voice: Voice, to?: string): string {
  const steps = of.scale.map(
    (step, index) =>
      `${sayOwes(step.owes, voice)} ${sayStep(step, of.clock, to && (index === 0 ? to : 'it'))}`,
  );
  const otherwise = sayOwes(of.otherwise, voice);
  const noShow = of.noShow ? `, and ${sayOwes(of.noShow, voice)} without a word` : '';
  if (steps.length === 0) return `${otherwise} at any time${noShow}`;
  return `${steps.join(', ')}, ${noShow ? '' : 'and '}${otherwise} later${noShow}`;
}

/** On which side word at exactly the limit is; whole days have no such instant. */
export function sayBoundary({ clock, scale, exactly }: Scale): string {
  if (scale.length === 0 || inWholeDays(clock)) return '';
  return ` Word at exactly the limit is ${exactly === 'in-time' ? 'in time' : 'too late'}.`;
}

/** “until 28 days before the principal call”, “until 20:00 on the day before”. */
function sayStep({ before, time }: Step, clock: Scale['clock'], to?: string): string {
  const ahead = to ? `before ${to}` : 'before';
  const itself = to ? `the day of ${to === 'it' ? 'that call' : to}` : 'the day itself';
  if (clock === 'clock') {
    const day = [itself, `the day ${ahead}`][before] ?? `the day ${before} days ${ahead}`;
    return `until ${time ?? ''} on ${day}`;
  }
  const unit = clock === 'working-days' ? 'working day' : clock === 'days' ? 'day' : 'hour';
  if (before === 0) return clock === 'hours' ? `until ${to ?? 'it'} begins` : `until ${itself}`;
  return `until ${before} ${unit}${before === 1 ? '' : 's'} ${ahead}`;
}

function sayOwes(owes: Owes, voice: Voice): string {
  switch (owes.owes) {
    case 'all':
      return 'all of it';
    case 'nothing':
      return 'nothing';
    case 'deposit':
      return 'the deposit';
    case 'share':
      return `${voice.share(owes.share)} of it`;
    case 'amount':
      return voice.money(owes.amount);
  }
}
