// What is owed for a call that falls: a scale by notice, on the clock of the place, with the boundary's side said.

import { inTime, type Notice, type Temporal } from '@colla/calendar';
import { type Call, REASONS } from '@colla/hours';
import { z } from 'zod';
import type { Desk, Item, Owes, Verdict } from '../desk.ts';
import { amountField, countField, shareField, timeField } from '../fields.ts';
import { type ClauseHead, clauseKind, perCurrency } from '../kind.ts';
import { sayConditions } from '../selector.ts';
import type { Voice } from '../voice.ts';
import { leave } from './fallen.ts';

const schema = perCurrency((currency) => {
  const owes = z.discriminatedUnion('owes', [
    z.strictObject({ owes: z.literal('nothing') }),
    z.strictObject({ owes: z.literal('share'), share: shareField('Share') }),
    z.strictObject({ owes: z.literal('amount'), amount: amountField(currency, 'Amount') }),
    z.strictObject({ owes: z.literal('deposit') }),
    z.strictObject({ owes: z.literal('all') }),
  ]);
  return z.strictObject({
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
    of: z.enum(['call', 'engagement']).default('call').meta({ title: 'Reckoned for' }),
    excused: z
      .strictObject({
        reasons: z.array(z.enum(REASONS)).min(1).readonly().meta({ title: 'Reasons' }),
        atMost: countField('At most (times)', { least: 1 }).optional(),
      })
      .optional()
      .meta({ title: 'Forgiven' }),
  });
});
type Terms = z.output<ReturnType<typeof schema>>;

export const cancellation = clauseKind({
  kind: 'cancellation',
  title: 'Cancellation',
  help: 'Says what is owed when a call falls, by how much notice was given; the pianist’s own absence costs the payer nothing.',
  schema,
  rivalry: () => 'fall',
  sentence,
  contradictions,
  phases: {
    standing: judge,
    cancellation: (_, desk, clause) => leave(desk, clause),
  },
  examples: [
    {
      case: 'An exam of 80.00 cancelled 30 hours before leaves half: under 48 hours, not under 24',
      terms: {
        scale: [
          { before: 48, owes: { owes: 'nothing' } },
          { before: 24, owes: { owes: 'share', share: 5000 } },
          { before: 0, owes: { owes: 'share', share: 7500 } },
        ],
        otherwise: { owes: 'all' },
      },
      given: {
        calls: ['exam 30 on 2026-06-13 at 15:00'],
        fallen: [{ call: 0, at: '2026-06-12T09:00' }],
      },
      with: [{ id: 'fee', kind: 'fixed', for: {}, terms: { price: '80.00' } }],
      owed: '40.00',
    },
    {
      case: 'Word at 21:15 is too late where the terms say by 20:00 on the day before',
      terms: {
        clock: 'clock',
        scale: [{ before: 1, time: '20:00', owes: { owes: 'nothing' } }],
        otherwise: { owes: 'all' },
      },
      given: {
        calls: ['rehearsal 30 on 2026-03-04 at 14:00'],
        fallen: [{ call: 0, at: '2026-03-03T21:15' }],
      },
      with: [{ id: 'fee', kind: 'hourly', for: {}, terms: { price: '40.00' } }],
      owed: '20.00',
    },
  ],
});

/** Judges every fallen call this clause is closest to. */
function judge(terms: Terms, desk: Desk, clause: ClauseHead): void {
  let forgiven = 0;
  for (const item of desk.fallen(clause)) {
    const { standing } = item.call;
    if (standing.is !== 'cancelled' && standing.is !== 'missed') continue;
    const may =
      terms.excused?.reasons.includes(standing.reason) &&
      forgiven < (terms.excused.atMost ?? Number.POSITIVE_INFINITY);
    if (standing.by === 'pianist')
      item.verdict = verdict(clause, { owes: 'nothing' }, 'the pianist’s own absence', item);
    else if (may) {
      forgiven += 1;
      item.verdict = verdict(clause, { owes: 'nothing' }, `forgiven: ${standing.reason}`, item);
    } else item.verdict = byNotice(item, terms, desk, clause);
  }
}

function byNotice(item: Item, terms: Terms, desk: Desk, clause: ClauseHead): Verdict {
  const { call } = item;
  if (call.standing.is !== 'cancelled')
    return verdict(clause, terms.noShow ?? terms.otherwise, 'no word came', item);
  const { at } = call.standing;
  const principal = terms.of === 'engagement' ? fallenPrincipal(desk) : undefined;
  const { start } = (principal ?? call).planned;
  const step = terms.scale.find((step) =>
    inTime(at, start, {
      notice: noticeOf(step, terms),
      boundary: terms.exactly,
      holidays: desk.facts.holidays,
    }),
  );
  const why = `cancelled ${sayNotice(at, start, terms, desk.voice)} before the ${(principal ?? call).kind}`;
  return {
    ...verdict(clause, step?.owes ?? terms.otherwise, why, item),
    ...(principal ? { together: 'engagement' } : {}),
  };
}

function verdict(clause: ClauseHead, terms: Owes, why: string, item: Item): Verdict {
  return { clause, terms, why, together: item.call.id };
}

/** The call everything leads up to, where it is itself cancelled: then the whole is reckoned by its notice. */
function fallenPrincipal(desk: Desk): Call | undefined {
  const principal = desk.principal();
  return principal?.standing.is === 'cancelled' ? principal : undefined;
}

function noticeOf(step: Terms['scale'][number], terms: Terms): Notice {
  if (terms.clock === 'clock') return { by: 'clock', before: step.before, time: step.time ?? '00:00' };
  return { by: terms.clock, before: step.before };
}

function sayNotice(
  at: Temporal.ZonedDateTime,
  start: Temporal.ZonedDateTime,
  terms: Terms,
  voice: Voice,
): string {
  const minutes = Math.round((start.epochMilliseconds - at.epochMilliseconds) / 60_000);
  if (terms.clock === 'hours' || Math.abs(minutes) < 48 * 60) {
    return minutes < 60 ? `${minutes} min` : `${voice.number(String(Math.floor(minutes / 6) / 10))} h`;
  }
  const days = at.withTimeZone(start.timeZoneId).toPlainDate().until(start.toPlainDate()).days;
  return days === 1 ? '1 day' : `${days} days`;
}

function contradictions(terms: Terms): string[] {
  const said: string[] = [];
  for (const [index, step] of terms.scale.entries()) {
    const next = terms.scale[index + 1];
    if (next && !longer(step, next))
      said.push(
        `The scale must run from the longest notice to the shortest: ${step.before} stands before ${next.before}.`,
      );
    if (terms.clock === 'clock' && step.time === undefined)
      said.push('Notice by a time of day needs that time: give it as 20:00.');
    if (terms.clock !== 'clock' && step.time !== undefined)
      said.push(
        'A time of day goes with notice by a time of day only: leave it out, or count notice by the clock.',
      );
  }
  return said;
}

/** Whether a step asks for more notice than the next: more days, or as many and an earlier hour. */
function longer(step: Terms['scale'][number], next: Terms['scale'][number]): boolean {
  return step.before > next.before || (step.before === next.before && (step.time ?? '') < (next.time ?? ''));
}

function sentence(terms: Terms, said: { voice: Voice; for: ClauseHead['for'] }): string {
  const { voice } = said;
  const of =
    terms.of === 'engagement'
      ? 'Cancelling the engagement'
      : `Cancelling ${said.for.calls ? `a ${voice.either(said.for.calls)}` : 'a call'}`;
  const steps = terms.scale.map((step) => `${sayOwes(step.owes, voice)} ${sayStep(step, terms)}`);
  const excused = terms.excused
    ? ` ${voice.either(terms.excused.reasons)} is forgiven${terms.excused.atMost ? (terms.excused.atMost === 1 ? ' once' : ` ${terms.excused.atMost} times`) : ''}.`
    : '';
  const exactly =
    terms.scale.length > 0 && (terms.clock === 'hours' || terms.clock === 'clock')
      ? ` Word at exactly the limit is ${terms.exactly === 'in-time' ? 'in time' : 'too late'}.`
      : '';
  const noShow = terms.noShow ? `, and ${sayOwes(terms.noShow, voice)} without a word` : '';
  const scale =
    steps.length > 0
      ? `${steps.join(', ')}, and ${sayOwes(terms.otherwise, voice)} later`
      : `${sayOwes(terms.otherwise, voice)} at any time`;
  return `${of}${sayConditions({ ...said.for, calls: undefined }, voice)} costs ${scale}${noShow}.${exactly}${excused}`;
}

function sayStep(step: Terms['scale'][number], terms: Terms): string {
  if (terms.clock === 'clock') {
    const day =
      step.before === 1
        ? 'the day before'
        : step.before === 0
          ? 'the day itself'
          : `the day ${step.before} days before`;
    return `until ${step.time ?? ''} on ${day}`;
  }
  const unit = terms.clock === 'working-days' ? 'working day' : terms.clock === 'days' ? 'day' : 'hour';
  if (step.before === 0) return terms.clock === 'hours' ? 'until it begins' : 'until the day itself';
  return `until ${step.before} ${unit}${step.before === 1 ? '' : 's'} before`;
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
      return voice.share(owes.share);
    case 'amount':
      return voice.money(owes.amount);
  }
}
