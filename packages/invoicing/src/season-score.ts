// The season score: one stave for each institution or soloist, a mark for each call, hours by week, money owed.

import { inSeason, minutesOf, type Season, Temporal, weeksOf } from '@colla/calendar';
import { type Engagement, type House, hasAgreement, statementOf } from '@colla/engagements';
import { type Call, type CallKind, inOrder, type Standing, timesOf } from '@colla/hours';
import type { Currency } from '@colla/money';
import { type Billable, billable, payersOf } from './billable.ts';
import { byMonth, type Earning, earnedIn } from './earned.ts';
import { type Invoice, standingOf } from './invoice.ts';
import { hoursByWeek, type WeekOfHours } from './season-weeks.ts';

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

/** Money told beside a stave, one sum a currency. Minor units; what was asked too much of one payer lessens no other's. */
export interface StaveMoney {
  readonly currency: Currency;
  readonly toInvoice: bigint;
  readonly owed: bigint;
  readonly overdue: bigint;
}

/**
 * What stands open between one payer and one engagement. `toInvoice` is negative where more was invoiced than they
 * owe now.
 */
export interface Owing extends StaveMoney {
  readonly engagement: string;
  readonly title: string;
  /** The party that pays, who need not be the one the stave is named for. */
  readonly payer: string;
  readonly payerName: string;
}

export interface Stave {
  readonly party: string;
  readonly name: string;
  readonly marks: readonly Mark[];
  readonly engagements: number;
  readonly toInvoice: number;
  readonly overdue: number;
  readonly money: readonly StaveMoney[];
  /** The payers and engagements that the money comes from; one with nothing open is left out. */
  readonly owing: readonly Owing[];
}

/** Minutes of one week, by how the calls stand, and by stave. */
export interface Week extends Omit<WeekOfHours, 'monday'> {
  readonly monday: Temporal.PlainDate;
}

export interface SeasonScore {
  readonly season: Season;
  readonly staves: readonly Stave[];
  readonly weeks: readonly Week[];
  readonly weeklyLimit: number;
  /** By month, each with the engagements that it comes from. */
  readonly earned: readonly Earning[];
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
    weeks: weeksOfHours(facts.season, staves),
    weeklyLimit: facts.weeklyLimit,
    earned: earned(facts, now),
  };
}

function earned({ season, engagements, house }: SeasonFacts, now: Temporal.ZonedDateTime): Earning[] {
  const earnings = engagements.flatMap((engagement) => {
    const statement = hasAgreement(engagement) ? statementOf(engagement, now, house) : undefined;
    return statement ? earnedIn(season, engagement, statement) : [];
  });
  return byMonth(earnings, house.locale);
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
  const owing = engagements.map((engagement) => owingOf(engagement, facts, now));
  return {
    party,
    name: facts.names.get(party) ?? '',
    marks: marks.sort((a, b) => Temporal.ZonedDateTime.compare(a.start, b.start)),
    engagements: engagements.length,
    toInvoice: owing.filter((parts) => parts.some(({ toInvoice }) => toInvoice > 0n)).length,
    overdue: engagements.reduce((count, engagement) => count + overdueOf(engagement, facts, now), 0),
    money: byCurrency(owing.flat()),
    owing: owing.flat().filter(({ toInvoice, owed }) => toInvoice !== 0n || owed !== 0n),
  };
}

/** One entry a payer, with or without anything open. */
function owingOf(engagement: Engagement, facts: SeasonFacts, now: Temporal.ZonedDateTime): Owing[] {
  const { id, title, currency } = engagement;
  const owing = new Map<string, Owing>();
  const add = (payer: string, name: string, more: Omit<StaveMoney, 'currency'>) => {
    const so = owing.get(payer) ?? { toInvoice: 0n, owed: 0n, overdue: 0n };
    const payerName = facts.names.get(payer) ?? name;
    owing.set(payer, { engagement: id, title, payer, payerName, ...plus({ currency, ...so }, more) });
  };
  for (const { payer, total } of leftToAsk(engagement, facts, now)) {
    add(engagement.payers[payer] ?? '', payer, { toInvoice: total, owed: 0n, overdue: 0n });
  }
  for (const invoice of invoicesOf(engagement, facts)) {
    const { is, owed } = standing(invoice, facts, now);
    const overdue = is === 'overdue' ? owed : 0n;
    add(invoice.to.party, invoice.to.name, { toInvoice: 0n, owed, overdue });
  }
  return [...owing.values()];
}

/** What is still to be invoiced counts once the work is done: an engagement whose calls are all ahead owes nothing yet. */
function leftToAsk(engagement: Engagement, facts: SeasonFacts, now: Temporal.ZonedDateTime): Billable[] {
  if (!hasAgreement(engagement) || !isDone(engagement)) return [];
  const statement = statementOf(engagement, now, facts.house);
  if (!statement) return [];
  const invoices = invoicesOf(engagement, facts);
  return payersOf(statement, invoices).map((payer) => billable(statement, payer, invoices));
}

function invoicesOf({ id }: Engagement, { invoices }: SeasonFacts): Invoice[] {
  return invoices.filter(({ engagement }) => engagement === id);
}

function standing(invoice: Invoice, { paid }: SeasonFacts, now: Temporal.ZonedDateTime) {
  return standingOf(invoice, paid.get(invoice.id) ?? 0n, now.toPlainDate());
}

function overdueOf(engagement: Engagement, facts: SeasonFacts, now: Temporal.ZonedDateTime): number {
  return invoicesOf(engagement, facts).filter((invoice) => standing(invoice, facts, now).is === 'overdue')
    .length;
}

function isDone(engagement: Engagement): boolean {
  return engagement.calls.every(({ standing }) => standing.is !== 'agreed');
}

function byCurrency(owing: readonly Owing[]): StaveMoney[] {
  const money = new Map<Currency, StaveMoney>();
  for (const { currency, toInvoice, owed, overdue } of owing) {
    const so = money.get(currency) ?? { currency, toInvoice: 0n, owed: 0n, overdue: 0n };
    money.set(currency, plus(so, { toInvoice: toInvoice > 0n ? toInvoice : 0n, owed, overdue }));
  }
  return [...money.values()];
}

function plus({ currency, ...so }: StaveMoney, more: Omit<StaveMoney, 'currency'>): StaveMoney {
  return {
    currency,
    toInvoice: so.toInvoice + more.toInvoice,
    owed: so.owed + more.owed,
    overdue: so.overdue + more.overdue,
  };
}

function weeksOfHours(season: Season, staves: readonly Stave[]): Week[] {
  const mondays = weeksOf(season);
  const hours = hoursByWeek(mondays.map(String), staves, ({ start }) => start.toPlainDate().toString());
  return hours.map((week, index) => ({ ...week, monday: mondays[index] ?? season.from }));
}
