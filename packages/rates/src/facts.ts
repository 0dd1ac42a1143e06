// The facts a statement is made from: what was asked, agreed, played and spent. No price is a fact, except
// a cost that was really paid.

import type { Temporal } from '@colla/calendar';
import type { Call } from '@colla/hours';
import type { Leg } from '@colla/travel';

/** What tariffs may ask about the soloist. Words are the organisation's own: “grade 6”, “cello”, “non-major”. */
export interface SoloistFacts {
  readonly level?: string;
  readonly instrument?: string;
  readonly study?: string;
}

/** One work of the programme, as far as money can depend on it. */
export interface WorkFacts {
  readonly id: string;
  readonly title: string;
  readonly minutes: number;
  /** Asked for by the soloist beyond what the pianist offers; some tariffs charge its preparation. */
  readonly requested: boolean;
}

/** Money spent for the engagement and passed on as the terms say, in minor units of the tariff's currency. */
export interface Cost {
  readonly id: string;
  readonly on: Temporal.PlainDate;
  readonly what: string;
  readonly amount: bigint;
}

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
  readonly agreedAt?: Temporal.ZonedDateTime;
  /** Public holidays of the place, as `2026-12-25`. */
  readonly holidays: ReadonlySet<string>;
}
