// An engagement as rows and back: its own row, and those of everything it is made of.

import type { Temporal } from '@colla/calendar';
import {
  type Agreement,
  type Engagement,
  type EngagementFacts,
  hasAgreement,
  partsWanted,
  type Work,
} from '@colla/engagements';
import { inOrder } from '@colla/hours';
import type { Cost, Move } from '@colla/rates';
import type { Leg } from '@colla/travel';
import { callOf, callRow, sameZone } from './call-rows.ts';
import { moment, momentIf, zoneOf } from './moments.ts';
import { type NewRow, present, type Row } from './rows.ts';
import type { agreements, calls, costs, engagements, legs, moves, payers, works } from './tables/index.ts';

/** The rows of one engagement, as they were read. */
export interface EngagementRows {
  readonly engagement: Row<typeof engagements>;
  readonly payers: readonly Row<typeof payers>[];
  readonly calls: readonly Row<typeof calls>[];
  readonly works: readonly Row<typeof works>[];
  readonly legs: readonly Row<typeof legs>[];
  readonly costs: readonly Row<typeof costs>[];
  readonly moves: readonly Row<typeof moves>[];
  readonly agreements: readonly Row<typeof agreements>[];
}

/** The rows of one engagement, to be kept. */
export interface NewEngagementRows {
  readonly engagement: NewRow<typeof engagements>;
  readonly payers: readonly NewRow<typeof payers>[];
  readonly calls: readonly NewRow<typeof calls>[];
  readonly works: readonly NewRow<typeof works>[];
  readonly legs: readonly NewRow<typeof legs>[];
  readonly costs: readonly NewRow<typeof costs>[];
  readonly moves: readonly NewRow<typeof moves>[];
  readonly agreements: readonly NewRow<typeof agreements>[];
}

/** The rows that an engagement comes to. */
export function rowsOf(engagement: Engagement, revision: number): NewEngagementRows {
  const of = { engagementId: engagement.id };
  return {
    engagement: { ...engagementRow(engagement), revision },
    payers: Object.entries(engagement.payers).map(([role, partyId], position) => ({
      ...of,
      role,
      position,
      partyId,
    })),
    calls: engagement.calls.map((call, position) => ({ ...of, position, ...callRow(call) })),
    works: engagement.programme.map(({ part, ...work }, position) => ({ ...of, position, ...work, ...part })),
    legs: engagement.legs.map(({ distance, ...leg }, position) => ({ ...of, position, ...leg, ...distance })),
    costs: engagement.costs.map((cost, position) => ({
      ...of,
      position,
      ...cost,
      currency: engagement.currency,
    })),
    moves: engagement.moves.map((move, position) => ({ ...of, position, ...moveRow(move) })),
    agreements: hasAgreement(engagement) ? [{ ...of, ...agreementRow(engagement.agreement) }] : [],
  };
}

/** The engagement that rows come to. */
export function engagementOf(rows: EngagementRows): Engagement {
  return { ...factsOf(rows), ...stageOf(rows) } as Engagement;
}

function engagementRow(engagement: Engagement): Omit<NewRow<typeof engagements>, 'revision'> {
  const { id, title, stage, currency, soloistParty, institutionParty, soloist } = engagement;
  return {
    ...{ id, title, stage, currency, ...soloist },
    soloistParty: soloistParty ?? null,
    institutionParty: institutionParty ?? null,
    sharers: engagement.sharers,
    pianistClass: engagement.pianistClass ?? null,
    circumstances: [...engagement.circumstances],
    rolledOver: engagement.rolledOver,
    note: engagement.note ?? null,
    askedAt: engagement.askedAt.toInstant(),
    askedZone: zoneOf(engagement.askedAt),
    ...stageRow(engagement),
    ...summaryRow(engagement),
  };
}

function stageRow(engagement: Engagement): Partial<NewRow<typeof engagements>> {
  switch (engagement.stage) {
    case 'inquiry':
    case 'agreed':
      return {};
    case 'quoted': {
      const { tariff, quotedAt, validUntil } = engagement.quote;
      return {
        quotedTariff: tariff,
        quotedAt: quotedAt.toInstant(),
        quotedZone: zoneOf(quotedAt),
        validUntil: validUntil.toInstant(),
        validZone: zoneOf(validUntil),
      };
    }
    case 'settled':
      return ended(engagement.settledAt);
    case 'cancelled':
      return {
        ...ended(engagement.cancelledAt),
        cancelledBy: engagement.by,
        cancelledReason: engagement.reason,
      };
    case 'declined':
    case 'lapsed':
      return ended(engagement.closedAt);
  }
}

function ended(at: Temporal.ZonedDateTime) {
  return { endedAt: at.toInstant(), endedZone: zoneOf(at) };
}

/** What a list says of an engagement without loading it whole. */
function summaryRow({ calls, programme }: EngagementFacts) {
  const ordered = inOrder(calls);
  const [first, last] = [ordered[0]?.planned.start, ordered.at(-1)?.planned.start];
  return {
    callCount: calls.length,
    firstAt: first?.toInstant() ?? null,
    firstZone: first ? zoneOf(first) : null,
    lastAt: last?.toInstant() ?? null,
    lastZone: last ? zoneOf(last) : null,
    partsWanted: partsWanted(programme).length,
  };
}

function agreementRow(agreement: Agreement): Omit<NewRow<typeof agreements>, 'engagementId'> {
  const { id, tariff, sentences, calls, deposit, holidays, terms, soFar, agreedAt, acceptedBy } = agreement;
  return {
    ...{ id, tariff, sentences, terms, acceptedBy },
    agreed: deposit ? { calls, deposit } : { calls },
    holidays: [...holidays],
    soFar: soFar ?? null,
    agreedAt: agreedAt.toInstant(),
    agreedZone: zoneOf(agreedAt),
  };
}

function moveRow({ call, was, at, by }: Move): Omit<NewRow<typeof moves>, 'engagementId' | 'position'> {
  return {
    ...{ call, by },
    startedAt: was.start.toInstant(),
    endedAt: was.end.toInstant(),
    zone: sameZone(was),
    wordAt: at.toInstant(),
    wordZone: zoneOf(at),
  };
}

function factsOf(rows: EngagementRows): EngagementFacts {
  const { id, title, currency, sharers, circumstances, rolledOver, askedAt, askedZone } = rows.engagement;
  const { level, instrument, study, membership } = rows.engagement;
  const { soloistParty, institutionParty, pianistClass, note } = rows.engagement;
  return {
    ...{ id, title, currency, sharers, circumstances, rolledOver },
    ...present({ soloistParty, institutionParty, pianistClass, note }),
    payers: Object.fromEntries(rows.payers.map(({ role, partyId }) => [role, partyId])),
    calls: rows.calls.map(callOf),
    programme: rows.works.map(workOf),
    legs: rows.legs.map(legOf),
    costs: rows.costs.map(costOf),
    moves: rows.moves.map(moveOf),
    soloist: present({ level, instrument, study, membership }),
    askedAt: moment(askedAt, askedZone),
  };
}

function workOf(row: Row<typeof works>): Work {
  const { id, composer, title, minutes, requested, difficulty, pages } = row;
  const { edition, key, cuts, state, permission, receivedOn } = row;
  const part = present({ edition, key, cuts, state, permission, receivedOn });
  return { id, composer, title, minutes, requested, ...present({ difficulty, pages }), part };
}

function legOf(row: Row<typeof legs>): Leg {
  const { id, on, from, to, thousandths, unit, minutes, purpose } = row;
  return { id, on, from, to, distance: { thousandths, unit }, minutes, purpose };
}

function costOf({ id, on, what, amount }: Row<typeof costs>): Cost {
  return { id, on, what, amount };
}

function moveOf({ call, startedAt, endedAt, zone, wordAt, wordZone, by }: Row<typeof moves>): Move {
  const was = { start: moment(startedAt, zone), end: moment(endedAt, zone) };
  return { call, was, at: moment(wordAt, wordZone), by };
}

/** The agreement that a row comes to. */
export function agreementOf(row: Row<typeof agreements>): Agreement {
  const { id, tariff, sentences, agreed, holidays, terms, soFar, agreedAt, agreedZone, acceptedBy } = row;
  const frozen = { id, tariff, sentences, ...agreed, holidays, terms, ...present({ soFar }) };
  return { ...frozen, agreedAt: moment(agreedAt, agreedZone), acceptedBy };
}

/** What the stage adds to the facts. */
function stageOf({ engagement: row, agreements }: EngagementRows): object {
  const endedAt = momentIf(row.endedAt, row.endedZone);
  const [frozen] = agreements;
  const agreement = frozen && { agreement: agreementOf(frozen) };
  const quotedAt = momentIf(row.quotedAt, row.quotedZone);
  const validUntil = momentIf(row.validUntil, row.validZone);
  const { stage, quotedTariff: tariff } = row;
  if (stage === 'inquiry') return { stage };
  if (stage === 'quoted' && tariff && quotedAt && validUntil)
    return { stage, quote: { tariff, quotedAt, validUntil } };
  if (stage === 'agreed' && agreement) return { stage, ...agreement };
  if (stage === 'settled' && agreement && endedAt) return { stage, ...agreement, settledAt: endedAt };
  if (stage === 'cancelled' && agreement && endedAt && row.cancelledBy && row.cancelledReason) {
    return { stage, ...agreement, cancelledAt: endedAt, by: row.cancelledBy, reason: row.cancelledReason };
  }
  if ((stage === 'declined' || stage === 'lapsed') && endedAt) return { stage, closedAt: endedAt };
  throw new Error(`engagement ${row.id} is ${stage} without what belongs to that`);
}
