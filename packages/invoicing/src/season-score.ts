// The season score: one stave for each institution or soloist, a mark for each call, hours by week, money owed.

import { inSeason, minutesOf, type Season, Temporal, weekOf, weeksOf } from '@colla/calendar';
import { type Engagement, type House, hasAgreement, statementOf } from '@colla/engagements';
import { type Call, type CallKind, inOrder, type Standing, timesOf } from '@colla/hours';
import type { Currency } from '@colla/money';
import { leftToInvoice } from './billable.ts';
import { type Invoice, standingOf } from './invoice.ts';

/** One call on a stave. Times are the real ones where it was played. */
export interface Mark {
  readonly call: string;
  readonly engagement: string;
  readonly title: string;
  readonly kind: CallKind;
  readonly place: string;
  readonly start: Temporal.ZonedDateTime;
  readonly end: Temporal.ZonedDateTime;
  readonly minutes: number;
  readonly is: Standing['is'];
}

/** Money told beside a stave, one sum a currency. Minor units. */
export interface StaveMoney {
  readonly currency: Currency;
  readonly toInvoice: bigint;
  readonly owed: bigint;
  readonly overdue: bigint;
}

/** What stands open for one engagement: what the money beside its stave opens to. */
export interface Owing extends StaveMoney {
  readonly engagement: string;
  readonly title: string;
}

export interface Stave {
  readonly party: string;
  readonly name: string;
  readonly marks: readonly Mark[];
  readonly engagements: number;
  readonly toInvoice: number;
  readonly overdue: number;
  readonly money: readonly StaveMoney[];
  /** The engagements that the money comes from; one with nothing open is left out. */
  readonly owing: readonly Owing[];
}

/** Minutes of one week, by how the calls stand, and by stave. */
export interface Week {
  readonly monday: Temporal.PlainDate;
  readonly played: number;
  readonly agreed: number;
  readonly held: number;
  readonly byStave: Readonly<Record<string, number>>;
}

export interface SeasonScore {
  readonly season: Season;
  readonly staves: readonly Stave[];
  readonly weeks: readonly Week[];
  readonly weeklyLimit: number;
}

/** What the score is drawn from. `paid` is what was paid on each invoice, by its id. */
export interface SeasonFacts {
  readonly season: Season;
  readonly engagements: readonly Engagement[];
  readonly invoices: readonly Invoice[];
  readonly paid: ReadonlyMap<string, bigint>;
  readonly names: ReadonlyMap<string, string>;
  readonly house: House;
  readonly weeklyLimit: number;
}

/** Draws the season as it stands at `now`. Engagements without a call in it leave no mark, nor their money. */
export function seasonScore(facts: SeasonFacts, now: Temporal.ZonedDateTime): SeasonScore {
  const groups = new Map<string, Engagement[]>();
  for (const engagement of facts.engagements) {
    if (marksOf(engagement, facts.season).length === 0) continue;
    const stave = staveOf(engagement);
    groups.set(stave, [...(groups.get(stave) ?? []), engagement]);
  }
  const staves = [...groups].map(([party, engagements]) => drawStave(party, engagements, facts, now));
  staves.sort((a, b) => a.name.localeCompare(b.name, facts.house.locale));
  return {
    season: facts.season,
    staves,
    weeks: hoursByWeek(facts.season, staves),
    weeklyLimit: facts.weeklyLimit,
  };
}

/** The stave an engagement stands on: its institution's, else its soloist's, else its payer's. */
function staveOf(engagement: Engagement): string {
  return engagement.institutionParty ?? engagement.soloistParty ?? Object.values(engagement.payers)[0] ?? '';
}

function marksOf(engagement: Engagement, season: Season): Mark[] {
  return inOrder(engagement.calls)
    .filter((call) => inSeason(timesOf(call).start.toPlainDate(), season))
    .map((call) => markOf(call, engagement));
}

function markOf(call: Call, engagement: Engagement): Mark {
  const { start, end } = timesOf(call);
  const released =
    call.standing.is === 'held' && (engagement.stage === 'declined' || engagement.stage === 'lapsed');
  return {
    call: call.id,
    engagement: engagement.id,
    title: engagement.title,
    kind: call.kind,
    place: call.place,
    start,
    end,
    minutes: minutesOf({ start, end }),
    is: released ? 'cancelled' : call.standing.is,
  };
}

function drawStave(
  party: string,
  engagements: readonly Engagement[],
  facts: SeasonFacts,
  now: Temporal.ZonedDateTime,
): Stave {
  const marks = engagements.flatMap((engagement) => marksOf(engagement, facts.season));
  const sums = engagements.map((engagement) => moneyOf(engagement, facts, now));
  return {
    party,
    name: facts.names.get(party) ?? '',
    marks: marks.sort((a, b) => Temporal.ZonedDateTime.compare(a.start, b.start)),
    engagements: engagements.length,
    toInvoice: sums.filter(({ toInvoice }) => toInvoice > 0n).length,
    overdue: sums.reduce((count, { overdueInvoices }) => count + overdueInvoices, 0),
    money: byCurrency(sums),
    owing: sums.flatMap((sum, index) => owingOf(sum, engagements[index])),
  };
}

/** What is still to be invoiced counts once the work is done: an engagement whose calls are all ahead owes nothing yet. */
function moneyOf(engagement: Engagement, facts: SeasonFacts, now: Temporal.ZonedDateTime) {
  const invoices = facts.invoices.filter((invoice) => invoice.engagement === engagement.id);
  const statement =
    hasAgreement(engagement) && isDone(engagement) ? statementOf(engagement, now, facts.house) : undefined;
  const standings = invoices.map((invoice) =>
    standingOf(invoice, facts.paid.get(invoice.id) ?? 0n, now.toPlainDate()),
  );
  const sum = (of: readonly { owed: bigint }[]) => of.reduce((total, { owed }) => total + owed, 0n);
  const overdue = standings.filter(({ is }) => is === 'overdue');
  return {
    currency: statement?.currency ?? invoices[0]?.currency,
    toInvoice: statement ? leftToInvoice(statement, invoices) : 0n,
    owed: sum(standings),
    overdue: sum(overdue),
    overdueInvoices: overdue.length,
  };
}

function owingOf(sum: ReturnType<typeof moneyOf>, engagement: Engagement | undefined): Owing[] {
  const { currency, toInvoice, owed, overdue } = sum;
  if (!engagement || !currency || (toInvoice === 0n && owed === 0n)) return [];
  return [{ engagement: engagement.id, title: engagement.title, currency, toInvoice, owed, overdue }];
}

function isDone(engagement: Engagement): boolean {
  return engagement.calls.every(({ standing }) => standing.is !== 'agreed');
}

function byCurrency(sums: readonly ReturnType<typeof moneyOf>[]): StaveMoney[] {
  const money = new Map<Currency, StaveMoney>();
  for (const { currency, toInvoice, owed, overdue } of sums) {
    if (!currency) continue;
    const so = money.get(currency) ?? { currency, toInvoice: 0n, owed: 0n, overdue: 0n };
    money.set(currency, {
      currency,
      toInvoice: so.toInvoice + toInvoice,
      owed: so.owed + owed,
      overdue: so.overdue + overdue,
    });
  }
  return [...money.values()];
}

function hoursByWeek(season: Season, staves: readonly Stave[]): Week[] {
  const weeks = new Map(weeksOf(season).map((monday) => [monday.toString(), emptyWeek(monday)]));
  for (const { party, marks } of staves) {
    for (const mark of marks) {
      const week = weeks.get(weekOf(mark.start.toPlainDate()).toString());
      if (!week || (mark.is !== 'played' && mark.is !== 'agreed' && mark.is !== 'held')) continue;
      week[mark.is] += mark.minutes;
      week.byStave[party] = (week.byStave[party] ?? 0) + mark.minutes;
    }
  }
  return [...weeks.values()];
}

function emptyWeek(monday: Temporal.PlainDate) {
  return { monday, played: 0, agreed: 0, held: 0, byStave: {} as Record<string, number> };
}
