// Which of its kind a call is: the second service of a day, the sixth lesson of a term.

import type { Call } from '@colla/hours';
import { z } from 'zod';
import { areApart, type Dimension, endField, inRange, isWithin, type Range } from './dimension.ts';
import type { Facts } from './facts.ts';
import { counts } from './item.ts';
import { occasionOf } from './occasion.ts';

/** The first is 1. Both ends belong to it; an end left out is open. */
export interface Nth extends Range {
  readonly each: 'day' | 'week' | 'month' | 'term' | 'engagement';
}

export const nthSchema = z
  .strictObject({
    from: endField('From the (1 is the first)', { least: 1 }),
    to: endField('To the', { least: 1 }),
    each: z.enum(['day', 'week', 'month', 'term', 'engagement']).meta({ title: 'Counted anew for each' }),
  })
  .refine(({ from, to }) => from !== undefined || to !== undefined, 'asks for nothing. Give one end at least')
  .refine(({ from = 0, to = from }) => from <= to, 'ends below where it begins. Exchange its two ends');

/**
 * Calls of one kind as agreed, in the order they happen. One that falls keeps its place, so that no other call costs
 * more or less for it.
 */
export const byNth: Dimension<Nth> = {
  ofCall: true,
  fits: (wanted, call, facts) => call !== undefined && inRange(wanted, placeOf(call, wanted.each, facts)),
  within: (inner, outer) => inner.each === outer.each && isWithin(inner, outer),
  apart: (one, other) => one.each === other.each && areApart(one, other),
};

function placeOf(call: Call, each: Nth['each'], facts: Facts): number {
  const occasion = occasionOf(call, each, facts);
  const before = facts.calls.filter(
    (other) =>
      other.kind === call.kind &&
      counts(other, facts.offered) &&
      comesBefore(other, call) &&
      occasionOf(other, each, facts) === occasion,
  );
  return before.length + 1;
}

/** Two at one instant in the order of their ids. */
function comesBefore(one: Call, other: Call): boolean {
  const ahead = other.planned.start.epochMilliseconds - one.planned.start.epochMilliseconds;
  return ahead === 0 ? one.id < other.id : ahead > 0;
}
