// Which music is late under the terms, and what that costs.

import type { Temporal } from '@colla/calendar';
import type { Charge } from '../charge.ts';
import type { Desk } from '../desk.ts';
import { dueOn } from '../due.ts';
import type { Facts, WorkFacts } from '../facts.ts';
import type { LatePart } from '../findings.ts';
import { fitsEngagement } from '../fit.ts';
import { groupsOf } from '../groups.ts';
import type { ClauseHead } from '../kind.ts';
import type { Voice } from '../voice.ts';
import type { LateTerms } from './late-score.ts';

type Step = LateTerms['steps'][number];

/** A work whose part is late, and the step that it reached. */
interface Late {
  readonly step: Step;
  readonly part: LatePart;
  readonly work: WorkFacts;
}

/** The works whose part came late, or is still out when the statement is made, each with the step it reached. */
export function lateUnder(terms: LateTerms, desk: Desk, clause: ClauseHead): Late[] {
  if (!fitsEngagement(clause.for, desk.facts)) return [];
  const event = eventOf(terms, desk.facts);
  if (!event) return [];
  return desk.facts.programme.flatMap((work) => {
    const came = cameOn(work, desk.asOf);
    const step = terms.steps.findLast(
      (step) => came !== undefined && daysAfter(limitOf(step, work, event, terms), came) > 0,
    );
    if (!step || !came) return [];
    const dueOn = limitOf(step, work, event, terms);
    const daysLate = daysAfter(dueOn, came);
    return [
      {
        step,
        work,
        part: { clause: clause.id, work: work.title, dueOn, daysLate, means: MEANS[step.means.as] },
      },
    ];
  });
}

/** The day by which these terms first want a work's part; undefined where what it runs from is not known. */
export function wantedOn(
  terms: LateTerms,
  work: Pick<WorkFacts, 'difficulty'>,
  facts: Facts,
): Temporal.PlainDate | undefined {
  const event = eventOf(terms, facts);
  const [first] = terms.steps;
  return event && first && limitOf(first, work, event, terms);
}

function eventOf({ before }: LateTerms, facts: Facts): Temporal.PlainDate | undefined {
  return dueOn([{ event: before, days: 0 }], facts);
}

/** Hard works are wanted earlier, on whichever side of its event the day lies. */
function limitOf(
  { days }: Step,
  { difficulty }: Pick<WorkFacts, 'difficulty'>,
  event: Temporal.PlainDate,
  { side, harder }: LateTerms,
): Temporal.PlainDate {
  const earlier = harder.find((hard) => hard.difficulty === difficulty)?.days ?? 0;
  return event.add({ days: (side === 'before' ? -days : days) - earlier });
}

const MEANS = {
  charge: 'a charge',
  share: 'a charge',
  'may decline': 'the pianist may decline',
  'hours lost': 'hours are lost',
} as const;

/** The day a part came; the day of the statement for one still wanted; undefined where nobody keeps track. */
function cameOn({ part }: WorkFacts, asOf: Temporal.ZonedDateTime): Temporal.PlainDate | undefined {
  if (part?.receivedOn) return part.receivedOn;
  return part?.state === 'wanted' || part?.state === 'promised' ? asOf.toPlainDate() : undefined;
}

function daysAfter(limit: Temporal.PlainDate, came: Temporal.PlainDate): number {
  return limit.until(came, { largestUnit: 'days' }).days;
}

/** For each work, or once for the one that costs most. */
export function chargeLate(terms: LateTerms, desk: Desk, clause: ClauseHead): void {
  if (!desk.stands) return;
  const charged = lateUnder(terms, desk, clause).map((late) => ({
    late,
    charges: chargesFor(late, desk, clause),
  }));
  const worth = ({ charges }: (typeof charged)[number]) =>
    charges.reduce(
      (sum, { rate, quantity }) => sum + (rate * BigInt(quantity.count)) / BigInt(quantity.of),
      0n,
    );
  const dearest = charged
    .filter(({ charges }) => charges.length > 0)
    .toSorted((one, other) => Number(worth(other) - worth(one)));
  for (const { late, charges } of dearest.slice(0, terms.each === 'work' ? terms.most : 1))
    for (const charge of charges)
      desk.charge(clause, {
        category: 'supplement',
        what: `Late score, ${late.work.title}`,
        facts: [{ name: 'why', value: wanted(late.part, desk.voice) }],
        ...charge,
      });
}

type LateFee = Pick<Charge, 'about' | 'payer' | 'quantity' | 'unit' | 'rate' | 'said'>;

function chargesFor({ step: { means }, work, part }: Late, desk: Desk, clause: ClauseHead): LateFee[] {
  if (means.as === 'share') return sharesFor(means.share, work, desk);
  if (means.as !== 'charge') return [];
  const count = { delay: 1, day: part.daysLate, week: Math.ceil(part.daysLate / 7) }[means.per];
  const quantity = { count, of: 1 };
  return [{ about: work.id, payer: clause.payer, quantity, unit: means.per, rate: means.amount }];
}

/** A share of what each payer is charged for the engagement, without supplements and discounts. */
function sharesFor(share: number, work: WorkFacts, { lines, voice }: Desk): LateFee[] {
  const fees = lines.filter(({ category }) => category !== 'supplement' && category !== 'discount');
  return [...groupsOf(fees, ({ payer }) => payer)].map(([payer, theirs]) => {
    const rate = theirs.reduce((sum, { amount }) => sum + amount, 0n);
    const quantity = { count: share, of: 10_000 };
    return {
      about: `${work.id}:${payer}`,
      payer,
      quantity,
      unit: `of ${voice.money(rate)}`,
      rate,
      said: voice.share(share),
    };
  });
}

/** “Sonata: wanted by 23 May 2026, 8 days late”. */
export function why(part: LatePart, voice: Voice): string {
  return `${part.work}: ${wanted(part, voice)}`;
}

function wanted({ dueOn, daysLate }: LatePart, voice: Voice): string {
  return `wanted by ${voice.day(dueOn.toString())}, ${daysLate === 1 ? '1 day' : `${daysLate} days`} late`;
}
