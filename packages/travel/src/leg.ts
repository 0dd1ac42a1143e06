// A leg: one journey for an engagement, and the distance of it.

import type { Temporal } from '@colla/calendar';
import { type OrRefusal, Refusal } from '@colla/refusal';

export const DISTANCE_UNITS = ['km', 'mile'] as const;
export type DistanceUnit = (typeof DISTANCE_UNITS)[number];

/** A distance as it was read off: thousandths of its unit, so 12.5 miles is 12 500 thousandths. */
export interface Distance {
  readonly thousandths: number;
  readonly unit: DistanceUnit;
}

export interface Leg {
  readonly id: string;
  readonly on: Temporal.PlainDate;
  readonly from: string;
  readonly to: string;
  readonly distance: Distance;
  /** Minutes under way, where the terms pay travelling time. */
  readonly minutes: number;
  readonly purpose: string;
}

/** Reads a distance such as `12.5`; refuses a negative one and more than three decimals. */
export function distance(text: string, unit: DistanceUnit): OrRefusal<Distance> {
  const match = /^(\d{1,6})(?:[.,](\d{1,3}))?$/.exec(text.trim());
  if (!match) {
    return new Refusal(
      'travel/no-distance',
      `“${text}” is not a distance. Write figures, such as 12 or 12.5.`,
      { text },
    );
  }
  return { thousandths: Number(match[1]) * 1000 + Number((match[2] ?? '').padEnd(3, '0')), unit };
}

/** An international mile is exactly 1 609.344 m (international yard and pound agreement, 1959). */
const MILLIMETRES = { km: 1_000_000, mile: 1_609_344 } as const;

/** The same distance in another unit, to the nearest thousandth of it. */
export function inUnit(of: Distance, unit: DistanceUnit): Distance {
  if (of.unit === unit) return of;
  return { thousandths: Math.round((of.thousandths * MILLIMETRES[of.unit]) / MILLIMETRES[unit]), unit };
}

/** Plain figures: 12 500 thousandths is `12.5`. */
export function distanceText({ thousandths }: Distance): string {
  const fraction = String(thousandths % 1000)
    .padStart(3, '0')
    .replace(/0+$/, '');
  return `${Math.floor(thousandths / 1000)}${fraction && `.${fraction}`}`;
}
