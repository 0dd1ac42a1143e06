// Domain values as they go over the wire: amounts as decimal text, days and instants as text, nothing hidden added.

import type { Season, Span, Temporal } from '@colla/calendar';
import {
  type Agreement,
  type Engagement,
  type House,
  hasAgreement,
  type Organisation,
  type Party,
  type Quote,
  type Work,
} from '@colla/engagements';
import type { Call, Standing } from '@colla/hours';
import type { Block } from '@colla/invoicing';
import { toDecimal } from '@colla/money';
import { type Cost, type Move, sentencesOf, type Tariff, type Term } from '@colla/rates';
import { distanceText, type Leg } from '@colla/travel';
import { showDeposit } from './deposit.ts';
import type {
  AgreementJson,
  BlockJson,
  CallJson,
  EngagementJson,
  EngagementSummaryJson,
  LegJson,
  WorkJson,
} from './engagements.ts';
import type { OrganisationJson, PartyJson, TermJson } from './organisations.ts';
import type { SeasonJson } from './seasons.ts';
import type { TariffJson, TariffWholeJson } from './tariffs.ts';

export function showOrganisation({ closedThrough, ...of }: Organisation): OrganisationJson {
  return {
    ...of,
    address: [...of.address],
    payTo: [...of.payTo],
    holidays: [...of.holidays],
    terms: of.terms.map(showTerm),
    ...(closedThrough ? { closedThrough: closedThrough.toString() } : {}),
  };
}

function showTerm({ name, from, to }: Term): TermJson {
  return { name, from: from.toString(), to: to.toString() };
}

export function showParty(of: Party): PartyJson {
  return { ...of, address: [...of.address] };
}

export function showSeason(of: Season): SeasonJson {
  return { ...of, from: of.from.toString(), to: of.to.toString() };
}

/** A tariff as kept: all its versions, oldest first. */
interface Kept {
  readonly id: string;
  readonly versions: readonly [Tariff, ...Tariff[]];
}

export function showTariff({ id, versions }: Kept, locale: string): TariffJson {
  const latest = versions.at(-1) ?? versions[0];
  return { id, name: latest.name, currency: latest.currency, latest: showVersion(latest, locale) };
}

export function showTariffWhole(of: Kept, locale: string): TariffWholeJson {
  return { ...showTariff(of, locale), versions: of.versions.map((version) => showVersion(version, locale)) };
}

function showVersion(of: Tariff, locale: string): TariffJson['latest'] {
  return {
    version: of.version,
    from: of.from.toString(),
    written: writtenOf(of),
    sentences: sentencesOf(of, locale),
  };
}

function writtenOf({ written }: Tariff): TariffJson['latest']['written'] {
  return {
    ...written,
    clauses: written.clauses.map((clause) => ({ ...clause, terms: { ...clause.terms } })),
  };
}

/** One line of the list of engagements, as kept. */
interface Summary {
  readonly id: string;
  readonly title: string;
  readonly stage: Engagement['stage'];
  readonly soloist?: string;
  readonly institution?: string;
  readonly calls: number;
  readonly first?: Temporal.ZonedDateTime;
  readonly last?: Temporal.ZonedDateTime;
  readonly next?: Pick<Call, 'kind' | 'label'> & { readonly start: Temporal.ZonedDateTime };
  readonly partsWanted: number;
}

export function showEngagementSummary({ first, last, next, ...of }: Summary): EngagementSummaryJson {
  return {
    ...of,
    ...(first ? { first: first.toString() } : {}),
    ...(last ? { last: last.toString() } : {}),
    ...(next ? { next: { ...next, start: next.start.toString() } } : {}),
  };
}

/** Sentences of a quote are said in the language of the house; those of an agreement are as they were read. */
export function showEngagement(of: Engagement, house: Pick<House, 'locale' | 'soFar'>): EngagementJson {
  const { soFar } = hasAgreement(of) ? of.agreement : house;
  return {
    id: of.id,
    title: of.title,
    stage: of.stage,
    currency: of.currency,
    ...(of.soloistParty === undefined ? {} : { soloistParty: of.soloistParty }),
    ...(of.institutionParty === undefined ? {} : { institutionParty: of.institutionParty }),
    payers: { ...of.payers },
    soloist: { ...of.soloist },
    sharers: of.sharers,
    ...(of.pianistClass === undefined ? {} : { pianistClass: of.pianistClass }),
    circumstances: [...of.circumstances],
    ...(of.note === undefined ? {} : { note: of.note }),
    askedAt: of.askedAt.toString(),
    calls: of.calls.map(showCall),
    programme: of.programme.map(showWork),
    legs: of.legs.map(showLeg),
    costs: of.costs.map((cost) => showCost(cost, of.currency)),
    moves: of.moves.map(showMove),
    rolledOver: { ...of.rolledOver },
    ...(soFar === undefined ? {} : { soFar }),
    ...stageOf(of, house.locale),
  };
}

/** What its stage adds: the quote, the agreement, when it ended. */
function stageOf(of: Engagement, locale: string): Pick<EngagementJson, 'quote' | 'agreement' | 'endedAt'> {
  switch (of.stage) {
    case 'inquiry':
      return {};
    case 'quoted':
      return { quote: showQuote(of.quote, locale) };
    case 'declined':
    case 'lapsed':
      return { endedAt: of.closedAt.toString() };
    case 'agreed':
      return { agreement: showAgreement(of.agreement, of.id) };
    case 'settled':
      return { agreement: showAgreement(of.agreement, of.id), endedAt: of.settledAt.toString() };
    case 'cancelled':
      return { agreement: showAgreement(of.agreement, of.id), endedAt: of.cancelledAt.toString() };
  }
}

function showQuote(of: Quote, locale: string): NonNullable<EngagementJson['quote']> {
  return {
    tariff: nameOf(of.tariff),
    sentences: sentencesOf(of.tariff, locale),
    quotedAt: of.quotedAt.toString(),
    validUntil: of.validUntil.toString(),
  };
}

export function showAgreement(of: Agreement, engagement: string): AgreementJson {
  return {
    id: of.id,
    engagement,
    tariff: nameOf(of.tariff),
    written: writtenOf(of.tariff),
    sentences: [...of.sentences],
    calls: of.calls.map(({ planned, ...call }) => ({ ...call, ...showSpan(planned) })),
    ...(of.deposit ? { deposit: showDeposit(of.deposit, of.tariff.currency) } : {}),
    holidays: [...of.holidays],
    terms: of.terms.map(showTerm),
    ...(of.soFar === undefined ? {} : { soFar: of.soFar }),
    agreedAt: of.agreedAt.toString(),
    acceptedBy: of.acceptedBy,
  };
}

function nameOf({ name, version, currency }: Tariff) {
  return { name, version, currency };
}

function showCall({ planned, standing, lifted, ...call }: Call): CallJson {
  return {
    ...call,
    ...showSpan(planned),
    standing: showStanding(standing),
    ...(lifted ? { lifted: { ...lifted, at: lifted.at.toString() } } : {}),
  };
}

function showMove({ call, was, at, by }: Move): EngagementJson['moves'][number] {
  return { call, ...showSpan(was), at: at.toString(), by };
}

/** Why calls wait, and for how much. */
export function showBlock({ currency, due, owed, calls, ...of }: Block): BlockJson {
  return { ...of, due: due.toString(), owed: toDecimal(owed, currency), calls: [...calls] };
}

function showStanding(of: Standing): CallJson['standing'] {
  switch (of.is) {
    case 'held':
      return showHold(of);
    case 'played':
      return { is: 'played', ...showSpan(of.times) };
    case 'cancelled':
      return { ...showHold(of), at: of.at.toString() };
    default:
      return of;
  }
}

function showHold<Held extends { readonly lapsesAt?: Temporal.ZonedDateTime }>({ lapsesAt, ...held }: Held) {
  return { ...held, ...(lapsesAt ? { lapsesAt: lapsesAt.toString() } : {}) };
}

function showSpan({ start, end }: Span): { start: string; end: string } {
  return { start: start.toString(), end: end.toString() };
}

function showWork({ part, ...work }: Work): WorkJson {
  const { receivedOn, ...rest } = part;
  return { ...work, part: { ...rest, ...(receivedOn ? { receivedOn: receivedOn.toString() } : {}) } };
}

function showLeg({ on, distance, ...leg }: Leg): LegJson {
  return { ...leg, on: on.toString(), distance: distanceText(distance), unit: distance.unit };
}

function showCost(of: Cost, currency: Engagement['currency']): EngagementJson['costs'][number] {
  return { ...of, on: of.on.toString(), amount: toDecimal(of.amount, currency) };
}

/** A page of a list, each item shown. */
export function showPage<Item, Json>(
  { items, next }: { readonly items: readonly Item[]; readonly next?: string },
  show: (item: Item) => Json,
): { items: Json[]; next?: string } {
  return { items: items.map(show), ...(next === undefined ? {} : { next }) };
}

/** What a line of a statement opens to: the sentences as agreed, or as they are quoted. */
export function showSentences(of: Engagement, locale: string): { clause: string; sentence: string }[] {
  if (hasAgreement(of)) return [...of.agreement.sentences];
  return of.stage === 'quoted' ? sentencesOf(of.quote.tariff, locale) : [];
}
