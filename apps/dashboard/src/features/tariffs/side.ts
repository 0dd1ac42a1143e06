// Days before an event or after it: the books keep them with a sign; one types the days, and chooses the side.

import { tariffs as say } from '../../catalogue/tariffs.ts';
import type { Leaf, Path } from './leaves.ts';

type Side = 'before' | 'after';

const SIDE = 'side';
const SIGN = /^[-\u2212]/;

/** Whether a figure is days that can lie on either side of an event. */
export function hasSides({ shape }: Pick<Leaf, 'shape'>): boolean {
  return shape.is === 'figure' && shape.unit === 'days' && shape.least < 0;
}

/** The side of such days, as a choice of its own. */
export function sideOf({ path, title, value }: Leaf): Leaf {
  return {
    path: [...path, SIDE],
    title: say('side', { title }),
    shape: { is: 'choice', words: ['before', 'after'] satisfies Side[] },
    value: Number(value) < 0 ? 'before' : 'after',
  };
}

/** Where the days stand of which this is the side; undefined where it is no side. */
export function daysOf(path: Path): Path | undefined {
  return path.at(-1) === SIDE ? path.slice(0, -1) : undefined;
}

export function sideTyped(days: string): Side {
  return SIGN.test(days) ? 'before' : 'after';
}

export function withoutSide(days: string): string {
  return days.replace(SIGN, '');
}

/** Days as the form holds them. */
export function onSide(days: string, side: string): string {
  return side === 'before' ? `-${withoutSide(days)}` : withoutSide(days);
}
