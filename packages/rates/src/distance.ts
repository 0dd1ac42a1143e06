// How far it is: the longest journey of an engagement, beyond one distance and up to another.

import { DISTANCE_UNITS, type DistanceUnit, inUnit } from '@colla/travel';
import { z } from 'zod';
import type { Dimension } from './dimension.ts';
import type { Facts } from './facts.ts';

/** Bands that follow one another leave no gap: exactly `upTo` still belongs to the nearer one. */
export interface DistanceBand {
  readonly unit: DistanceUnit;
  readonly over?: number | undefined;
  readonly upTo?: number | undefined;
}

const end = (title: string) => z.int().min(0).max(100_000).optional().meta({ title, unit: 'count' });

export const distanceSchema = z
  .strictObject({
    unit: z.enum(DISTANCE_UNITS).meta({ title: 'Distances in' }),
    over: end('Beyond'),
    upTo: end('Up to'),
  })
  .refine(
    ({ over, upTo }) => over !== undefined || upTo !== undefined,
    'asks for nothing. Give one end at least',
  )
  .refine(
    ({ over = -1, upTo = over + 1 }) => over < upTo,
    'ends no farther than it begins. Let it reach farther',
  );

/** An engagement without journeys is at no distance. */
export const byDistance: Dimension<DistanceBand> = {
  ofCall: false,
  fits: (band, _, facts) => {
    const far = farthest(facts, band.unit);
    return far > over(band) && far <= upTo(band);
  },
  within: (inner, outer) =>
    over(inner) >= inUnitOf(inner, over(outer), outer) && upTo(inner) <= inUnitOf(inner, upTo(outer), outer),
  apart: (one, other) =>
    upTo(one) <= inUnitOf(one, over(other), other) || inUnitOf(one, upTo(other), other) <= over(one),
};

/** Thousandths of the unit. */
function farthest({ legs }: Facts, unit: DistanceUnit): number {
  return Math.max(0, ...legs.map(({ distance }) => inUnit(distance, unit).thousandths));
}

function over({ over }: DistanceBand): number {
  return over === undefined ? Number.NEGATIVE_INFINITY : over * 1000;
}

function upTo({ upTo }: DistanceBand): number {
  return upTo === undefined ? Number.POSITIVE_INFINITY : upTo * 1000;
}

/** An end of another band, in thousandths of this one's unit. */
function inUnitOf({ unit }: DistanceBand, end: number, other: DistanceBand): number {
  return Number.isFinite(end) ? inUnit({ thousandths: end, unit: other.unit }, unit).thousandths : end;
}

/** “journeys beyond 30 km”, “journeys up to 10 miles”, “journeys beyond 10 and up to 30 km”. */
export function sayDistance({ unit, over, upTo }: DistanceBand): string {
  const ends = [
    over === undefined ? [] : [`beyond ${over}`],
    upTo === undefined ? [] : [`up to ${upTo}`],
  ].flat();
  return `journeys ${ends.join(' and ')} ${unit === 'km' ? 'km' : 'miles'}`;
}
