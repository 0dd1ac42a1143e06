// What an engagement would come to if something happened: each case is the statement over facts as they would be.

import { Temporal } from '@colla/calendar';
import type { Call, Reason, Who } from '@colla/hours';
import {
  type Debt,
  type Facts,
  type LateCharge,
  latePayment,
  type Statement,
  statement,
  type Terms,
  wantedOn,
} from '@colla/rates';
import { refused } from '@colla/refusal';
import { fallOf } from './falling.ts';
import { shiftOf } from './moving.ts';

export type CaseName =
  | 'stands'
  | 'fallsNow'
  | 'fallsTomorrow'
  | 'fallsFriday'
  | 'fallsThen'
  | 'longer'
  | 'moved'
  | 'lateScores'
  | 'latePaid';

/** What is asked: of which call, who would say so and why, on a day of one's choice, and how late things come. */
export interface Question {
  readonly call: Call;
  readonly by: Who;
  readonly reason: Reason;
  /** When word might come; nothing where it cannot be read. */
  readonly saidAt: Temporal.ZonedDateTime | undefined;
  /** When the call might begin instead; it lasts as long as it would. */
  readonly movedTo: Temporal.ZonedDateTime | undefined;
  readonly scoresLateDays: number;
  readonly paidLateDays: number;
  /** What is to be paid, and by when. */
  readonly debts: readonly Omit<Debt, 'on'>[];
}

/** One case and what it comes to, in minor units. */
export interface Case {
  readonly name: CaseName;
  /** When word would come, or the call would begin. */
  readonly at?: Temporal.ZonedDateTime;
  /** How many days late. */
  readonly days?: number;
  readonly statement: Statement;
  /** What a late payment costs on top, debt by debt. */
  readonly charges: readonly LateCharge[];
  readonly total: bigint;
  /** What follows beside money, or how a fallen call is judged: “cancelled 30 h before the exam”. */
  readonly why: readonly string[];
}

/** The calls that can still be cancelled, the next one first. */
export function callsAhead({ calls }: Facts, now: Temporal.ZonedDateTime): Call[] {
  return calls
    .filter(({ standing, planned }) => standing.is === 'agreed' && isBefore(now, planned.start))
    .sort((a, b) => Temporal.ZonedDateTime.compare(a.planned.start, b.planned.start));
}

/** What can happen to one call that is ahead; the first case is that nothing does. */
export function casesOf(facts: Facts, terms: Terms, asked: Question, now: Temporal.ZonedDateTime): Case[] {
  const asAgreed = statement(facts, terms, now);
  const longer = statement({ ...facts, calls: facts.calls.map(anHourMore(asked.call)) }, terms, now);
  return [
    caseOf('stands', asAgreed),
    ...falls(facts, terms, asked, now),
    caseOf('longer', longer),
    ...moved(facts, terms, asked, now),
    ...lateScores(facts, terms, asked, now),
    ...latePaid(facts, terms, asked, asAgreed),
  ];
}

function caseOf(name: CaseName, of: Statement, more: Partial<Case> = {}): Case {
  return { name, statement: of, charges: [], total: of.total, why: [], ...more };
}

function falls(facts: Facts, terms: Terms, asked: Question, now: Temporal.ZonedDateTime): Case[] {
  const { call, by, reason } = asked;
  return wordsAhead(now, asked.saidAt)
    .filter(({ at }) => isBefore(at, call.planned.start))
    .map(({ name, at }): Case => {
      const { after, why } = fallOf(facts, terms, { call: call.id, at, by, reason }, at);
      return caseOf(name, after, { at, why });
    });
}

/**
 * Now, at the same time tomorrow and on Friday; Friday is left out where it is tomorrow, and is next week's today. And
 * when one likes, from now on.
 */
function wordsAhead(now: Temporal.ZonedDateTime, saidAt: Temporal.ZonedDateTime | undefined) {
  const tomorrow = now.add({ days: 1 });
  const friday = now.add({ days: (12 - now.dayOfWeek) % 7 || 7 });
  const words: { name: CaseName; at: Temporal.ZonedDateTime }[] = [
    { name: 'fallsNow', at: now },
    { name: 'fallsTomorrow', at: tomorrow },
    ...(friday.equals(tomorrow) ? [] : [{ name: 'fallsFriday' as const, at: friday }]),
  ];
  if (!saidAt || !isBefore(now, saidAt)) return words;
  return [...words, { name: 'fallsThen' as const, at: saidAt }];
}

function isBefore(one: Temporal.ZonedDateTime, other: Temporal.ZonedDateTime): boolean {
  return Temporal.ZonedDateTime.compare(one, other) < 0;
}

function anHourMore(one: Call) {
  return (call: Call): Call =>
    call.id === one.id
      ? { ...call, planned: { ...call.planned, end: call.planned.end.add({ hours: 1 }) } }
      : call;
}

/** By the word of whoever would cancel, said now; as long as it was to be. */
function moved(facts: Facts, terms: Terms, asked: Question, now: Temporal.ZonedDateTime): Case[] {
  const { call, by, movedTo } = asked;
  if (!movedTo) return [];
  const lasts = call.planned.start.until(call.planned.end);
  const to = { start: movedTo, end: movedTo.add(lasts) };
  const { after } = shiftOf(facts, terms, { call: call.id, to, at: now, by }, now);
  return [caseOf('moved', after, { at: movedTo })];
}

/** All the music so many days after the first day by which it is wanted; nothing where no clause wants it by a day. */
function lateScores(facts: Facts, terms: Terms, asked: Question, now: Temporal.ZonedDateTime): Case[] {
  const clause = terms.tariff.clauses.find((clause) => clause.kind === 'late-score');
  const days = asked.scoresLateDays;
  if (!clause || facts.programme.length === 0 || days < 1) return [];
  const programme = facts.programme.map((work) => {
    const wanted = wantedOn(clause.terms, work, facts);
    return wanted ? { ...work, part: { receivedOn: wanted.add({ days }) } } : work;
  });
  const late = statement({ ...facts, programme }, terms, now);
  return [caseOf('lateScores', late, { days, why: [...new Set(late.late.map(({ means }) => means))] })];
}

/** Everything that is to be paid, paid so many days after it is due; nothing where the terms say nothing of that. */
function latePaid(
  facts: Facts,
  terms: Terms,
  { debts, paidLateDays: days }: Question,
  asAgreed: Statement,
): Case[] {
  if (days < 1) return [];
  const answers = debts.flatMap((debt) => {
    const answer = latePayment(facts, terms, { ...debt, on: debt.dueOn.add({ days }) });
    return answer === undefined ? [] : [answer];
  });
  if (answers.length === 0) return [];
  const charges = answers.flatMap((answer) => (refused(answer) ? [] : [answer]));
  const why = answers.flatMap((answer) => (refused(answer) ? [answer.sentence] : [answer.arithmetic]));
  const total = charges.reduce((sum, charge) => sum + charge.total, asAgreed.total);
  return [caseOf('latePaid', asAgreed, { days, charges, total, why: [...new Set(why)] })];
}
