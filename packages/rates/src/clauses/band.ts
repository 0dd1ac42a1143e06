// A band in which a price that is agreed one by one must lie. Several kinds have one.

import type { Voice } from '../voice.ts';

export interface Band {
  readonly from: bigint;
  readonly to: bigint;
}

/** Why a price and its band cannot stand together; empty where they can. */
export function bandContradiction(price: bigint, band: Band | undefined): string[] {
  if (!band) return [];
  if (band.from > band.to) return ['The band ends below where it begins: exchange its two amounts.'];
  return price < band.from || price > band.to
    ? ['The price lies outside its band: choose one inside it, or widen the band.']
    : [];
}

/** The band as it follows a sentence; empty where there is none. */
export function sayBand(band: Band | undefined, voice: Voice): string {
  return band ? ` The price is agreed between ${voice.money(band.from)} and ${voice.money(band.to)}.` : '';
}
