// An engagement: one agreed piece of work for one soloist or institution, and the moves it can make.
// Each stage is a type of its own; a move takes one and returns the next, or refuses by name.

import { Temporal } from '@colla/calendar';
import type { Call, Reason, Who } from '@colla/hours';
import type { Currency } from '@colla/money';
import {
  type AgreedCall,
  type Move as CallMove,
  type Cost,
  type DepositDue,
  type SoloistFacts,
  type Tariff,
  type Term,
  withChoices,
} from '@colla/rates';
import { type OrRefusal, Refusal, refused } from '@colla/refusal';
import type { Leg } from '@colla/travel';
import { fall, isOpen } from './hold.ts';
import type { Work } from './programme.ts';

/** What an engagement holds at every stage. */
export interface EngagementFacts {
  readonly id: string;
  readonly title: string;
  /** What its costs are kept in and its tariff must be in. */
  readonly currency: Currency;
  /** Soloist and institution by party id; an institution gives the engagement its stave in the season. */
  readonly soloistParty?: string;
  readonly institutionParty?: string;
  /** Who pays, by the roles the tariff names: `payer`, `school`, `family`… to party ids. */
  readonly payers: Readonly<Record<string, string>>;
  readonly calls: readonly Call[];
  readonly programme: readonly Work[];
  readonly legs: readonly Leg[];
  readonly costs: readonly Cost[];
  /** Agreed calls that somebody wished at another time, in the order in which it was entered. */
  readonly moves: readonly CallMove[];
  /** Minutes that an entitlement has over from the engagement before, by its clause. */
  readonly rolledOver: Readonly<Record<string, number>>;
  readonly soloist: SoloistFacts;
  readonly sharers: number;
  readonly pianistClass?: string;
  readonly circumstances: readonly string[];
  readonly note?: string;
  readonly askedAt: Temporal.ZonedDateTime;
}

/** A tariff version put to a payer, with the prices chosen in its bands, and until when it stands. */
export interface Quote {
  readonly tariff: Tariff;
  readonly quotedAt: Temporal.ZonedDateTime;
  readonly validUntil: Temporal.ZonedDateTime;
}

/**
 * What was accepted, frozen: the tariff version, its sentences as read, the calls, the deposit, and what was known that
 * day of the holidays and terms of the place and of the payer's other engagements.
 */
export interface Agreement {
  readonly id: string;
  readonly tariff: Tariff;
  readonly sentences: readonly { readonly clause: string; readonly sentence: string }[];
  readonly calls: readonly AgreedCall[];
  /** As it was reckoned that day; left out where none was agreed, and in books from before it was kept. */
  readonly deposit?: DepositDue;
  /** Public holidays as the organisation had them entered, `2026-12-25`. */
  readonly holidays: readonly string[];
  readonly terms: readonly Term[];
  /** Engagements of the same payer agreed before it in its season; left out where they were not counted yet. */
  readonly soFar?: number;
  readonly agreedAt: Temporal.ZonedDateTime;
  /** Who said yes, by name. */
  readonly acceptedBy: string;
}

export type Inquiry = EngagementFacts & { readonly stage: 'inquiry' };
export type Quoted = EngagementFacts & { readonly stage: 'quoted'; readonly quote: Quote };
export type Agreed = EngagementFacts & { readonly stage: 'agreed'; readonly agreement: Agreement };
export type Settled = EngagementFacts & {
  readonly stage: 'settled';
  readonly agreement: Agreement;
  readonly settledAt: Temporal.ZonedDateTime;
};
export type Cancelled = EngagementFacts & {
  readonly stage: 'cancelled';
  readonly agreement: Agreement;
  readonly cancelledAt: Temporal.ZonedDateTime;
  readonly by: Who;
  readonly reason: Reason;
};
/** Not taken up: the pianist or the payer said no, or nobody said yes in time. */
export type Closed = EngagementFacts & {
  readonly stage: 'declined' | 'lapsed';
  readonly closedAt: Temporal.ZonedDateTime;
};

export type Engagement = Inquiry | Quoted | Agreed | Settled | Cancelled | Closed;
export type Stage = Engagement['stage'];
export const STAGES = [
  'inquiry',
  'quoted',
  'agreed',
  'settled',
  'declined',
  'lapsed',
  'cancelled',
] as const satisfies Stage[];

/** Puts a tariff version to the payer, or another one in its place. Refuses a price outside its band. */
export function quote(
  engagement: Engagement,
  offer: {
    tariff: Tariff;
    choices: Readonly<Record<string, string>>;
    at: Temporal.ZonedDateTime;
    validUntil: Temporal.ZonedDateTime;
  },
): OrRefusal<Quoted> {
  const open = allowed(engagement, 'quote', 'inquiry', 'quoted');
  if (refused(open)) return open;
  if (open.calls.length === 0) return noCalls();
  if (Temporal.ZonedDateTime.compare(offer.validUntil, offer.at) <= 0) {
    return new Refusal(
      'engagements/quote-ends-before-it-starts',
      'The quote would lapse before it is made. Let it stand until a later day.',
      {},
      '/validUntil',
    );
  }
  if (offer.tariff.currency !== open.currency) return otherCurrency(open.currency, offer.tariff.currency);
  const tariff = withChoices(offer.tariff, offer.choices);
  if (refused(tariff)) return tariff;
  return {
    ...factsBehind(open),
    stage: 'quoted',
    quote: { tariff, quotedAt: offer.at, validUntil: offer.validUntil },
  };
}

/** Either side says no before anything is agreed; every hold is released. */
export function decline(engagement: Engagement, at: Temporal.ZonedDateTime): OrRefusal<Closed> {
  return close(engagement, 'decline', at);
}

/** Nobody said yes in time; every hold is released. */
export function lapse(engagement: Engagement, at: Temporal.ZonedDateTime): OrRefusal<Closed> {
  return close(engagement, 'lapse', at);
}

function close(
  engagement: Engagement,
  move: 'decline' | 'lapse',
  at: Temporal.ZonedDateTime,
): OrRefusal<Closed> {
  const open = allowed(engagement, move, 'inquiry', 'quoted');
  if (refused(open)) return open;
  // Nobody owes anything for a hold, so it does not matter by whom it falls.
  const word = { at, by: 'payer', reason: 'other' } as const;
  const calls = open.calls.map((call) => (isOpen(call) ? fall(call, word) : call));
  return { ...factsBehind(open), calls, stage: move === 'decline' ? 'declined' : 'lapsed', closedAt: at };
}

/**
 * The whole falls: every agreed call that has not begun is cancelled at `at`, every hold is released. Refuses
 * while a call that had begun by then is not said to be played or missed: nothing could be said of it later.
 */
export function cancel(
  engagement: Engagement,
  word: { at: Temporal.ZonedDateTime; by: Who; reason: Reason },
): OrRefusal<Cancelled> {
  const open = allowed(engagement, 'cancel', 'agreed');
  if (refused(open)) return open;
  if (isBefore(word.at, open.agreement)) return wordTooEarly(open.agreement);
  const begun = open.calls.filter((call) => call.standing.is === 'agreed' && hasBegun(call, word.at));
  if (begun.length > 0) return callsOpen(begun.length, { begun: true });
  const calls = open.calls.map((call) => (isOpen(call) ? fall(call, word) : call));
  return { ...open, calls, stage: 'cancelled', cancelledAt: word.at, by: word.by, reason: word.reason };
}

/**
 * Everything is played or fallen, invoiced and paid. `toInvoice` is what the statement says beyond what was
 * invoiced, `owed` what is invoiced and not paid; both minor units.
 */
export function settle(
  engagement: Engagement,
  books: { at: Temporal.ZonedDateTime; toInvoice: bigint; owed: bigint },
): OrRefusal<Settled> {
  const open = allowed(engagement, 'settle', 'agreed');
  if (refused(open)) return open;
  const waiting = open.calls.filter(isOpen);
  if (waiting.length > 0) return callsOpen(waiting.length, { begun: false });
  if (books.toInvoice !== 0n || books.owed !== 0n) {
    return new Refusal(
      'engagements/money-open',
      'Something is still to be invoiced or paid. Settle follows when both are nothing.',
      {},
    );
  }
  return { ...open, stage: 'settled', settledAt: books.at };
}

/** True where money can still move: an agreement stands behind it. */
export function hasAgreement(engagement: Engagement): engagement is Agreed | Settled | Cancelled {
  return 'agreement' in engagement;
}

type Move = 'quote' | 'agree' | 'decline' | 'lapse' | 'cancel' | 'settle' | 'change';

/** The engagement, known to be at one of the stages a move can start from; or the refusal that names both. */
export function allowed<S extends Stage>(
  engagement: Engagement,
  move: Move,
  ...stages: S[]
): OrRefusal<Extract<Engagement, { stage: S }>> {
  if ((stages as Stage[]).includes(engagement.stage)) return engagement as Extract<Engagement, { stage: S }>;
  const verb = {
    quote: 'quoted',
    agree: 'agreed',
    decline: 'declined',
    lapse: 'let lapse',
    cancel: 'cancelled',
    settle: 'settled',
    change: 'changed',
  }[move];
  return new Refusal(
    'engagements/illegal-move',
    `“${engagement.title}” is ${said(engagement.stage)} and cannot be ${verb}: that takes one that is ${stages.map(said).join(' or ')}.`,
    { move, stage: engagement.stage },
  );
}

/** The engagement without the quote it may stand under. */
export function factsBehind(engagement: Inquiry | Quoted): EngagementFacts {
  if (engagement.stage === 'inquiry') return engagement;
  const { quote: _, ...facts } = engagement;
  return facts;
}

function said(stage: Stage): string {
  return stage === 'inquiry' ? 'an inquiry' : stage;
}

function otherCurrency(kept: Currency, asked: Currency): Refusal {
  return new Refusal(
    'engagements/other-currency',
    `The engagement is kept in ${kept} and the tariff in ${asked}. Choose a tariff in ${kept}, or enter the engagement in ${asked}.`,
    { kept, asked },
    '/tariff',
  );
}

function noCalls(): Refusal {
  return new Refusal(
    'engagements/no-calls',
    'There is no call to quote for yet. Enter at least one: what, where and when.',
    {},
    '/calls',
  );
}

function hasBegun(call: Call, at: Temporal.ZonedDateTime): boolean {
  return Temporal.ZonedDateTime.compare(call.planned.start, at) <= 0;
}

/** Whether an instant lies before a yes was said. People write a moment to the minute: that of the yes is not before it. */
export function isBefore(at: Temporal.ZonedDateTime, { agreedAt }: Agreement): boolean {
  const minute = agreedAt.round({ smallestUnit: 'minute', roundingMode: 'floor' });
  return Temporal.ZonedDateTime.compare(at, minute) < 0;
}

/** Why word from before an agreement ends nothing of it. */
export function wordTooEarly({ agreedAt }: Agreement): Refusal {
  const day = agreedAt.toPlainDate().toString();
  return new Refusal(
    'engagements/word-too-early',
    `This was agreed on ${day}, after that word came. Correct the moment it came.`,
    { agreed: day },
    '/on',
  );
}

function callsOpen(count: number, { begun }: { begun: boolean }): Refusal {
  const [calls, are, they] = count === 1 ? ['A call', 'is', 'it'] : [`${count} calls`, 'are', 'they'];
  return new Refusal(
    'engagements/calls-open',
    `${calls} ${begun ? 'had begun by then and ' : ''}${are} neither played nor cancelled. Say first how ${they} turned out.`,
    { calls: count },
  );
}
