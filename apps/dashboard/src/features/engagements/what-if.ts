// What an engagement would come to if something happened: each case is the statement over facts as they would be.

import { Temporal } from '@colla/calendar';
import type { Call } from '@colla/hours';
import { type Clause, dueOn, type Facts, type Statement, statement, type Terms } from '@colla/rates';
import { fallOf } from './falling.ts';

export type CaseName = 'stands' | 'fallsNow' | 'fallsTomorrow' | 'fallsFriday' | 'longer' | 'lateScores';

/** One case and what it comes to, in minor units. */
export interface Case {
  readonly name: CaseName;
  /** When word would come, where it is a cancellation. */
  readonly at?: Temporal.ZonedDateTime;
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
export function casesOf(facts: Facts, terms: Terms, call: Call, now: Temporal.ZonedDateTime): Case[] {
  const asAgreed = statement(facts, terms, now);
  const falls = wordsAhead(now)
    .filter(({ at }) => isBefore(at, call.planned.start))
    .map(({ name, at }): Case => {
      const { after, why } = fallOf(facts, terms, { call: call.id, at, by: 'payer', reason: 'other' }, at);
      return { name, at, total: after.total, why };
    });
  const longer = statement({ ...facts, calls: facts.calls.map(anHourMore(call)) }, terms, now);
  return [
    { name: 'stands', total: asAgreed.total, why: [] },
    ...falls,
    { name: 'longer', total: longer.total, why: [] },
    ...lateScores(facts, terms, now),
  ];
}

/** Now, at the same time tomorrow and on Friday; Friday is left out where it is tomorrow, and is next week's today. */
function wordsAhead(now: Temporal.ZonedDateTime): { name: CaseName; at: Temporal.ZonedDateTime }[] {
  const tomorrow = now.add({ days: 1 });
  const friday = now.add({ days: (12 - now.dayOfWeek) % 7 || 7 });
  return [
    { name: 'fallsNow', at: now },
    { name: 'fallsTomorrow', at: tomorrow },
    ...(friday.equals(tomorrow) ? [] : [{ name: 'fallsFriday' as const, at: friday }]),
  ];
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

/** All the music a week after the first day by which it is wanted; nothing where no clause wants it by a day. */
function lateScores(facts: Facts, terms: Terms, now: Temporal.ZonedDateTime): Case[] {
  const clause = terms.tariff.clauses.find((clause) => clause.kind === 'late-score');
  if (!clause || facts.programme.length === 0) return [];
  const programme = facts.programme.map((work) => {
    const wanted = wantedOn(clause, work, facts);
    return wanted ? { ...work, part: { receivedOn: wanted.add({ days: 7 }) } } : work;
  });
  const late: Statement = statement({ ...facts, programme }, terms, now);
  return [{ name: 'lateScores', total: late.total, why: [...new Set(late.late.map(({ means }) => means))] }];
}

type LateScore = Extract<Clause, { kind: 'late-score' }>;

function wantedOn({ terms }: LateScore, { difficulty }: Facts['programme'][number], facts: Facts) {
  const earlier = terms.harder.find((hard) => hard.difficulty === difficulty)?.days ?? 0;
  return dueOn([{ event: terms.before, days: 0 }], facts)?.subtract({
    days: (terms.steps[0]?.days ?? 0) + earlier,
  });
}
