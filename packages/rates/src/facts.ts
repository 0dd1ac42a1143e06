// The facts a statement is made from: what was asked, agreed, played and spent. No price is a fact, except
// a cost that was really paid.

import type { Season, Span, Temporal } from '@colla/calendar';
import type { Call, Who } from '@colla/hours';
import type { Leg } from '@colla/travel';
import type { DepositDue } from './findings.ts';

/** What tariffs may ask about the soloist. Words are the organisation's own: “grade 6”, “cello”, “non-major”. */
export interface SoloistFacts {
  readonly level?: string;
  readonly instrument?: string;
  readonly study?: string;
  /** Of a guild, union or studio: “member”. */
  readonly membership?: string;
}

/** One work of the programme, as far as money can depend on it. */
export interface WorkFacts {
  readonly id: string;
  readonly title: string;
  readonly minutes: number;
  /** Asked for by the soloist beyond what the pianist offers; some tariffs charge its preparation. */
  readonly requested: boolean;
  /** The organisation's own word for how hard the part is: “difficult”, “level 3”. */
  readonly difficulty?: string;
  /** Pages of the pianist's part. */
  readonly pages?: number;
  /** The pianist's part: when it came, or how it stands (“wanted” and “promised” parts have not come). */
  readonly part?: { readonly receivedOn?: Temporal.PlainDate; readonly state?: string };
}

/**
 * Money spent for the engagement and passed on as the terms say, or told because a share of it is owed (a prize, the
 * takings of an evening), in minor units of the tariff's currency.
 */
export interface Cost {
  readonly id: string;
  readonly on: Temporal.PlainDate;
  readonly what: string;
  readonly amount: bigint;
}

/**
 * A call that was put at another time: where it stood before, when word of it came, and whose wish it was. What the
 * pianist wished costs nobody anything.
 */
export interface Move {
  readonly call: string;
  readonly was: Span;
  readonly at: Temporal.ZonedDateTime;
  readonly by: Who;
}

/** A term into which a place divides its year; both days belong to it. */
export type Term = Omit<Season, 'id'>;

/** A call as it was agreed, whatever becomes of it later. */
export type AgreedCall = Pick<Call, 'id' | 'kind' | 'label' | 'planned'>;

/** Everything about one engagement that a price may depend on. An engagement is its own facts. */
export interface Facts {
  readonly calls: readonly Call[];
  readonly programme: readonly WorkFacts[];
  readonly legs: readonly Leg[];
  readonly costs: readonly Cost[];
  readonly soloist: SoloistFacts;
  /** How many soloists share the engagement; one unless a recital is shared. */
  readonly sharers: number;
  /** The class of pianist who plays, where the tariff tells them apart (“student”, “professional”). */
  readonly pianistClass?: string;
  /** Circumstances the tariff names: “plays alone”, “outside event”. */
  readonly circumstances: readonly string[];
  /** True until the engagement is agreed: calls kept free are then priced as offered. */
  readonly offered: boolean;
  readonly askedAt?: Temporal.ZonedDateTime;
  readonly agreedAt?: Temporal.ZonedDateTime;
  /** Public holidays of the place, as `2026-12-25`. */
  readonly holidays: ReadonlySet<string>;
  /** The terms into which the place divides its year. */
  readonly terms?: readonly Term[];
  /** Calls that were moved. */
  readonly moves?: readonly Move[];
  /** The calls as they were agreed, where something is. */
  readonly agreedCalls?: readonly AgreedCall[];
  /** The deposit as it was reckoned when it was agreed; left out where that was not kept, or there was none. */
  readonly agreedDeposit?: DepositDue;
  /** How many engagements of this payer came before it in the season. */
  readonly soFar?: number;
  /** Minutes left over from the term before, by the entitlement that lets them roll over. */
  readonly rolledOver?: Readonly<Record<string, number>>;
}
