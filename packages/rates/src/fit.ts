// Whether a selector fits a call or an engagement, and of two selectors which is the closer.

import type { Call } from '@colla/hours';
import type { Facts } from './facts.ts';
import { type Asking, type DimensionName, dimensions, type Selector } from './selector.ts';

const names = Object.keys(dimensions) as DimensionName[];

/** Whether a call of an engagement fits. */
export function fitsCall(selector: Selector, call: Call, facts: Facts): boolean {
  for (const { fits } of askedBy(selector)) if (!fits(call, facts)) return false;
  return true;
}

/** Whether an engagement as a whole fits; what the selector asks about calls is left aside. */
export function fitsEngagement(selector: Selector, facts: Facts): boolean {
  for (const { ofCall, fits } of askedBy(selector)) if (!ofCall && !fits(undefined, facts)) return false;
  return true;
}

/** Whether a selector asks anything about calls, and not only about the engagement as a whole. */
export function asksOfCalls(selector: Selector): boolean {
  return askedBy(selector).some(({ ofCall }) => ofCall);
}

interface Asked {
  readonly ofCall: boolean;
  readonly fits: (call: Call | undefined, facts: Facts) => boolean;
}

const asked = new WeakMap<Selector, readonly Asked[]>();

/** What a selector asks, found once for each selector. */
function askedBy(selector: Selector): readonly Asked[] {
  const known = asked.get(selector);
  if (known) return known;
  const found = names.flatMap((name) => askedAlong(name, selector));
  asked.set(selector, found);
  return found;
}

function askedAlong<Name extends DimensionName>(name: Name, selector: Selector): Asked[] {
  const wanted = wantedOf(selector, name);
  if (wanted === undefined) return [];
  const { ofCall, fits } = dimensions[name];
  return [{ ofCall, fits: (call, facts) => fits(wanted, call, facts) }];
}

function wantedOf<Name extends DimensionName>(selector: Selector, name: Name): Asking[Name] | undefined {
  const asking: { readonly [Of in DimensionName]?: Asking[Of] | undefined } = selector;
  return asking[name];
}

/**
 * Whether `a` asks for all that `b` asks for, and more: the rule by which one of two clauses goes before the
 * other. “Rehearsals on Sundays” is closer than “rehearsals”.
 */
export function closer(a: Selector, b: Selector): boolean {
  return within(a, b) && !within(b, a);
}

function within(a: Selector, b: Selector): boolean {
  return names.every((name) => withinAlong(name, a, b));
}

function withinAlong<Name extends DimensionName>(name: Name, a: Selector, b: Selector): boolean {
  const [inner, outer] = [wantedOf(a, name), wantedOf(b, name)];
  return outer === undefined || (inner !== undefined && dimensions[name].within(inner, outer));
}

/** Whether no call can fit both. */
export function apart(a: Selector, b: Selector): boolean {
  return names.some((name) => apartAlong(name, a, b));
}

function apartAlong<Name extends DimensionName>(name: Name, a: Selector, b: Selector): boolean {
  const [one, other] = [wantedOf(a, name), wantedOf(b, name)];
  return one !== undefined && other !== undefined && dimensions[name].apart(one, other);
}
