// What a statement says beside its lines: hours drawn, music that came late, taxes, the deposit, when to pay.

import type { Temporal } from '@colla/calendar';
import type { EventDay } from './fields.ts';
import type { Category, Line } from './line.ts';

/** One call that drew on an entitlement, or found nothing to draw: how many minutes, and how many it left. */
export interface Draw {
  readonly call: string;
  readonly minutes: number;
  readonly left: number;
  /** In a sentence: “Lesson on 4 March 2026 draws 0.5 h, which leaves 0.5 h.” */
  readonly says: string;
}

/**
 * What an entitlement grants for one occasion, in minutes: brought over and granted are used, left, lapsed and passed
 * on together.
 */
export interface Grant {
  /** The occasion: “the week of 2 March 2026”; none for the whole engagement. */
  readonly name?: string;
  /** What earlier occasions left and passed on. */
  readonly brought: number;
  readonly granted: number;
  readonly used: number;
  /** Of what is used, what calls to come are to draw. */
  readonly planned: number;
  readonly left: number;
  readonly lapsed: number;
  readonly passedOn: number;
  /** In the order they drew. */
  readonly draws: readonly Draw[];
  /** Calls that found nothing to draw, and why. */
  readonly missed: readonly Draw[];
  /** What was granted, and what became of the rest, in a sentence each. */
  readonly begins: string;
  readonly ends: string;
}

/** What an entitlement came to, in minutes: granted is used, left and lapsed together; and the calls that used them. */
export interface Drawn {
  readonly clause: string;
  readonly granted: number;
  readonly used: number;
  /** Of what is used, what calls to come are to draw. */
  readonly planned: number;
  readonly left: number;
  /** What earlier days, weeks, months or terms left, and later ones cannot use. */
  readonly lapsed: number;
  /** Where occasions are granted, and not only time. */
  readonly occasions?: { readonly granted: number; readonly used: number };
  /** Why it is lost altogether. */
  readonly lost?: string;
  readonly draws: readonly Draw[];
  /** Its own statement: occasion by occasion. */
  readonly grants: readonly Grant[];
}

/** A part that came, or still has not come, later than the terms ask. */
export interface LatePart {
  readonly clause: string;
  readonly work: string;
  readonly dueOn: Temporal.PlainDate;
  readonly daysLate: number;
  readonly means: 'a charge' | 'the pianist may decline' | 'hours are lost';
}

/** A line that is paid to a third party. */
export interface LineToOther extends Line {
  readonly payee: string;
}

/** One part of what a payer owes. Minor units. */
export interface Instalment {
  readonly payer: string;
  /** Its place among them, 1, 2, 3 …: each is due a month after the one before, unless it has a day of its own. */
  readonly ordinal: number;
  readonly due?: readonly EventDay[];
  readonly amount: bigint;
}

/** The deposit, in minor units: when it is due, until when it is given back, and what it counts towards. */
export interface DepositDue {
  readonly clause: string;
  readonly amount: bigint;
  readonly due: readonly EventDay[];
  readonly refundable?: readonly EventDay[];
  readonly counts: 'the final invoice' | 'the next invoice' | 'nothing';
  readonly arithmetic: string;
}

export interface PaymentDue {
  readonly clause: string;
  readonly due: readonly EventDay[];
  /** True where what is not paid by then is not played. */
  readonly gate: boolean;
  /** Monthly parts, the first due on the day itself, or parts with days of their own; none where all is due at once. */
  readonly instalments: readonly Instalment[];
  /** The share (basis points) that may be taken off what is paid by the earliest of some days. */
  readonly early?: { readonly share: number; readonly until: readonly EventDay[] };
}

/** One tax on one base, for one payer. Amounts are minor units. */
export interface TaxSum {
  readonly clause: string;
  readonly name: string;
  /** Basis points, to the hundredth. */
  readonly rate: number;
  readonly code: string;
  readonly inside: boolean;
  /** What the invoice has to say beside it: “VAT is owed by the recipient”. */
  readonly wording?: string;
  /** The kinds of line it is not on, where there are any. */
  readonly not?: readonly Category[];
  readonly payer: string;
  /** What of each line it is on, by the keys of the lines: of one that stands for several charges perhaps a part. */
  readonly on: readonly { readonly key: string; readonly amount: bigint }[];
  readonly base: bigint;
  readonly amount: bigint;
  readonly arithmetic: string;
}
