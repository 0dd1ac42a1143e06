// How the story of the season is told: what was asked, what became of it, and when, in weeks counted from the
// present one. Week 0 is the week of `now`, week −3 the third before it.

import type { PartState, Permission } from '@colla/engagements';
import type { CallKind, Reason, Who } from '@colla/hours';
import type { Method } from '@colla/invoicing';
import type { SoloistFacts } from '@colla/rates';
import type { CastName } from './cast.ts';
import type { TariffName } from './tariffs.ts';

export type Weekday = 'mon' | 'tue' | 'wed' | 'thu' | 'fri' | 'sat' | 'sun';

/** A day by its week and weekday, such as `[-3, 'sat']`. */
export type ToldDay = readonly [week: number, day: Weekday];

/** One call. It is played once its time is past, unless it falls. */
export interface ToldCall {
  readonly kind: CallKind;
  readonly label?: string;
  readonly on: ToldDay;
  readonly from: string;
  readonly minutes: number;
  readonly place: string;
  /** Minutes it ran over. */
  readonly over?: number;
  /** What must happen first. */
  readonly onlyIf?: string;
  /** Called off so many hours before; without them nobody said a word. */
  readonly falls?: { readonly by: Who; readonly reason: Reason; readonly hoursBefore?: number };
  /** Put at its time from that day, at somebody's wish, with so many hours' notice. */
  readonly moved?: { readonly was: ToldDay; readonly by: Who; readonly hoursBefore: number };
  /** Added after the invoices were sent. */
  readonly afterInvoices?: true;
}

export interface ToldWork {
  readonly composer: string;
  readonly title: string;
  readonly minutes: number;
  readonly requested?: true;
  readonly difficulty?: string;
  readonly pages?: number;
  readonly state: PartState;
  readonly permission?: Permission;
  readonly edition?: string;
  readonly key?: string;
  readonly cuts?: string;
  readonly received?: ToldDay;
}

export interface ToldLeg {
  readonly on: ToldDay;
  readonly from: string;
  readonly to: string;
  readonly km: string;
  readonly minutes: number;
  readonly purpose: string;
}

export interface ToldCost {
  readonly on: ToldDay;
  readonly what: string;
  readonly amount: string;
}

/** Money that came in for an invoice. Without an amount, all that was still owed. */
export interface ToldPayment {
  readonly daysAgo: number;
  readonly amount?: string;
  /** So much more than was still owed, whatever that came to. */
  readonly change?: string;
  readonly method?: Method;
  readonly reference?: string;
}

export interface ToldInvoice {
  /** The role that pays; `payer` where the tariff names nobody else. */
  readonly payer?: string;
  readonly daysAgo: number;
  readonly note?: string;
  readonly paid?: readonly ToldPayment[];
}

/** Where an engagement stands at the end of the telling. */
export type Ending =
  | { readonly is: 'inquiry' | 'quoted' | 'declined' | 'lapsed' | 'agreed' | 'settled' }
  | { readonly is: 'cancelled'; readonly hoursBefore: number; readonly by: Who; readonly reason: Reason };

/** One engagement as told. */
export interface Told {
  readonly title: string;
  readonly soloist?: CastName;
  readonly institution?: CastName;
  readonly payers: Readonly<Record<string, CastName>>;
  /** Who said yes, where it is not the first payer. */
  readonly acceptedBy?: string;
  readonly about?: SoloistFacts;
  readonly sharers?: number;
  readonly circumstances?: readonly string[];
  readonly note?: string;
  readonly tariff: TariffName;
  /** Prices chosen within their bands, by clause. */
  readonly choices?: Readonly<Record<string, string>>;
  /** The week in which it was asked for. */
  readonly asked: number;
  readonly calls: readonly ToldCall[];
  readonly programme?: readonly ToldWork[];
  readonly legs?: readonly ToldLeg[];
  readonly costs?: readonly ToldCost[];
  readonly ends: Ending;
  readonly invoices?: readonly ToldInvoice[];
}

/** The same call on one weekday of several weeks; `but` says what was different in some of them. */
export function weekly(
  weeks: readonly number[],
  day: Weekday,
  call: Omit<ToldCall, 'on'>,
  but: Readonly<Record<number, Partial<ToldCall>>> = {},
): ToldCall[] {
  return weeks.map((week) => ({ ...call, on: [week, day], ...but[week] }));
}

/** The way there and back, on each of some days. */
export function thereAndBack(
  way: { from: string; to: string; km: string; minutes: number; purpose: string },
  days: readonly ToldDay[],
): ToldLeg[] {
  return days.flatMap((on) => [
    { on, ...way },
    { on, ...way, from: way.to, to: way.from },
  ]);
}
