// Engagements on the wire, with calls, programme, legs, costs and agreement.

import { PART_STATES, PERMISSIONS, STAGES } from '@colla/engagements';
import { CALL_KINDS, REASONS } from '@colla/hours';
import { writtenTariffSchema } from '@colla/rates';
import { DISTANCE_UNITS } from '@colla/travel';
import { z } from 'zod';
import { deposit } from './deposit.ts';
import { invoice, payment } from './invoices.ts';
import { term } from './organisations.ts';
import { sentence } from './tariffs.ts';
import { amount, currencyCode, day, id, instant, page, price, text, time, words } from './words.ts';

const who = z.enum(['payer', 'pianist']);
const reason = z.enum(REASONS);

/** A span as a person writes it: local day and times at the place. */
export const spanInput = z.strictObject({
  on: day,
  from: time,
  until: time,
  /** The day it ends, where that is not `on`. */
  untilOn: day.optional(),
  zone: z.string().max(60),
  /** True where the second of two like times is meant, in the night when clocks go back. */
  fromAgain: z.boolean().optional(),
  untilAgain: z.boolean().optional(),
});

/** A moment as a person writes it: local day and time at a place. */
export const momentInput = z.strictObject({ on: day, at: time, zone: z.string().max(60) });
export type MomentInput = z.output<typeof momentInput>;

export const standing = z.discriminatedUnion('is', [
  z.object({ is: z.literal('held'), lapsesAt: instant.optional(), onlyIf: z.string().optional() }),
  z.object({ is: z.literal('agreed') }),
  z.object({ is: z.literal('played'), start: instant, end: instant }),
  z.object({
    is: z.literal('cancelled'),
    at: instant,
    by: who,
    reason,
    wasAgreed: z.boolean(),
    /** How it was held, where it was never agreed. */
    lapsesAt: instant.optional(),
    onlyIf: z.string().optional(),
  }),
  z.object({ is: z.literal('missed'), by: who, reason }),
]);

export const call = z.object({
  id,
  kind: z.enum(CALL_KINDS),
  label: z.string().optional(),
  place: z.string(),
  start: instant,
  end: instant,
  standing,
  /** That the pianist plays it though what was to be paid first was not: since when, and why. */
  lifted: z.object({ at: instant, reason: z.string() }).optional(),
});
export type CallJson = z.output<typeof call>;

export const callInput = z.strictObject({
  kind: z.enum(CALL_KINDS),
  label: words.optional(),
  place: z.string().trim().max(200).default(''),
  planned: spanInput,
  /** What must happen first, for a round or an option that is only kept free. */
  onlyIf: words.optional(),
  lapsesAt: momentInput.optional(),
});
export type CallInput = z.input<typeof callInput>;

/** The moment word came that a call moves, and whose wish it was. */
export const movedInput = momentInput.extend({ by: who });

/** What is left out stays as it is; `null` takes it away. */
export const callChange = z.strictObject({
  kind: z.enum(CALL_KINDS).optional(),
  label: words.nullable().optional(),
  place: z.string().trim().max(200).optional(),
  planned: spanInput.optional(),
  /** Until when it is kept free, of a call that is only held. */
  lapsesAt: momentInput.nullable().optional(),
  /** The word by which an agreed call moves; without it the times are only put right. */
  moved: movedInput.optional(),
});

/** A call as it stood before it was moved, and the word by which it was. */
export const callMove = z.object({ call: id, start: instant, end: instant, at: instant, by: who });

export const liftInput = z.strictObject({ reason: words });

/** The moment word came, as a person writes it. */
export const wordInput = momentInput.extend({ by: who, reason });

const part = z.object({
  edition: z.string().max(200).optional(),
  key: z.string().max(60).optional(),
  cuts: z.string().max(400).optional(),
  state: z.enum(PART_STATES),
  permission: z.enum(PERMISSIONS),
  receivedOn: day.optional(),
});

export const work = z.object({
  id,
  composer: z.string(),
  title: z.string(),
  minutes: z.int(),
  requested: z.boolean(),
  /** The organisation's own word for how hard the part is. */
  difficulty: z.string().optional(),
  /** Pages of the pianist's part. */
  pages: z.int().optional(),
  part,
});
export type WorkJson = z.output<typeof work>;

export const workInput = z.strictObject({
  id: id.optional(),
  composer: z.string().trim().max(120).default(''),
  title: words,
  minutes: z.int().min(0).max(600).default(0),
  requested: z.boolean().default(false),
  difficulty: words.optional(),
  pages: z.int().min(1).max(2000).optional(),
  part: part.partial().strict().default({}),
});

export const leg = z.object({
  id,
  on: day,
  from: z.string(),
  to: z.string(),
  distance: z.string(),
  unit: z.enum(DISTANCE_UNITS),
  minutes: z.int(),
  purpose: z.string(),
});
export type LegJson = z.output<typeof leg>;

export const legInput = z.strictObject({
  on: day,
  from: words,
  to: words,
  distance: z.string().max(12),
  unit: z.enum(DISTANCE_UNITS),
  minutes: z.int().min(0).max(2880).default(0),
  purpose: z.string().trim().max(200).default(''),
});

export const cost = z.object({ id, on: day, what: z.string(), amount });
export const costInput = z.strictObject({ on: day, what: words, amount: price });

/** Minutes by the clause of an entitlement. */
export const rolledOver = z.record(z.string().min(1).max(60), z.int().min(0).max(100_000));

export const soloistFacts = z.strictObject({
  level: words.optional(),
  instrument: words.optional(),
  study: words.optional(),
  /** Of a guild, union or studio. */
  membership: words.optional(),
});

const tariffRef = z.object({ name: z.string(), version: z.int(), currency: z.string() });

export const quote = z.object({
  tariff: tariffRef,
  sentences: z.array(sentence),
  quotedAt: instant,
  validUntil: instant,
});

export const agreement = z.object({
  id,
  engagement: id,
  tariff: tariffRef,
  /** The clauses as frozen, as written. */
  written: writtenTariffSchema,
  sentences: z.array(sentence),
  /** Each call as it was agreed; how it stands now is said by the engagement. */
  calls: z.array(call.pick({ id: true, kind: true, label: true, start: true, end: true })),
  /** The deposit as it was reckoned that day; left out where there is none, or it was not kept. */
  deposit: deposit.optional(),
  /** Public holidays as they were entered that day: later ones change no price that was agreed. */
  holidays: z.array(day),
  /** The terms of the place, likewise. */
  terms: z.array(term),
  /** Engagements of the same payer agreed before it in its season; left out where they were not counted yet. */
  soFar: z.int().optional(),
  agreedAt: instant,
  acceptedBy: z.string(),
});
export type AgreementJson = z.output<typeof agreement>;

export const engagement = z.object({
  id,
  title: z.string(),
  stage: z.enum(STAGES),
  currency: currencyCode,
  soloistParty: id.optional(),
  institutionParty: id.optional(),
  payers: z.record(z.string(), id),
  soloist: soloistFacts,
  sharers: z.int(),
  pianistClass: z.string().optional(),
  circumstances: z.array(z.string()),
  note: z.string().optional(),
  askedAt: instant,
  calls: z.array(call),
  programme: z.array(work),
  legs: z.array(leg),
  costs: z.array(cost),
  /** Calls that were moved by somebody's wish, in the order in which it was entered. */
  moves: z.array(callMove),
  /** Minutes that an entitlement has over from the engagement before, by its clause. */
  rolledOver: z.record(z.string(), z.int()),
  /**
   * Engagements of the same payer agreed before it in its season: those of today, and those of the day of the agreement
   * once there is one. Left out where they do not matter any more, or were not counted yet.
   */
  soFar: z.int().optional(),
  quote: quote.optional(),
  agreement: agreement.optional(),
  /** When it was settled, cancelled, declined or let lapse. */
  endedAt: instant.optional(),
});
export type EngagementJson = z.output<typeof engagement>;

/** That calls are not played until what is owed is paid: the clause, the day it was due, and the calls still blocked. */
export const block = z.object({
  clause: z.string(),
  sentence: z.string(),
  due: day,
  owed: amount,
  calls: z.array(id),
});
export type BlockJson = z.output<typeof block>;

/** One engagement with everything that hangs on it. */
export const engagementWhole = engagement.extend({
  block: block.optional(),
  parties: z.record(z.string(), z.string()),
  invoices: z.array(invoice),
  payments: z.array(payment),
});
export type EngagementWholeJson = z.output<typeof engagementWhole>;

/** A call that is still to come, as a list names it. */
const nextCall = call.pick({ kind: true, label: true, start: true });

/** One line of the list. */
export const engagementSummary = z.object({
  id,
  title: z.string(),
  stage: z.enum(STAGES),
  soloist: z.string().optional(),
  institution: z.string().optional(),
  calls: z.int(),
  /** Start of the first and of the last call. */
  first: instant.optional(),
  last: instant.optional(),
  /** The first call, held or agreed, that has not begun. */
  next: nextCall.optional(),
  partsWanted: z.int(),
});
export type EngagementSummaryJson = z.output<typeof engagementSummary>;
export const engagementPage = page(engagementSummary);

const engagementFields = z.strictObject({
  title: words,
  soloistParty: id,
  institutionParty: id,
  /** Who pays, by the roles the tariff names. */
  payers: z.record(z.string().min(1).max(60), id),
  soloist: soloistFacts,
  sharers: z.int().min(1).max(20),
  pianistClass: words,
  circumstances: z.array(words).max(20),
  rolledOver,
  note: text,
});

/** An inquiry: who, what, when; calls and programme may come with it. */
export const engagementInput = engagementFields
  .partial()
  .required({ title: true })
  .extend({
    currency: currencyCode.optional(),
    calls: z.array(callInput).max(500).default([]),
    programme: z.array(workInput).max(200).default([]),
  });
export type EngagementInput = z.input<typeof engagementInput>;

/** What is left out stays as it is; `null` takes it away. */
export const engagementChange = engagementFields.partial().extend({
  soloistParty: id.nullable().optional(),
  institutionParty: id.nullable().optional(),
  pianistClass: words.nullable().optional(),
  note: text.nullable().optional(),
});

export const quoteInput = z.strictObject({
  tariff: id,
  version: z.int().min(1).optional(),
  /** Prices chosen within their bands, by clause. */
  choices: z.record(z.string(), price).default({}),
  validUntil: day,
});
export const agreeInput = z.strictObject({
  acceptedBy: words,
  /** When they said yes: now, where left out. */
  said: momentInput.optional(),
});
