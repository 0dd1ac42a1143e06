// The cost of cancelling as a line of steps: where its points lie in a unit square, time to the right, money upwards.

import type { Temporal } from '@colla/calendar';
import type { CurveStep } from '@colla/rates';

export interface Drawing {
  /** When the picture begins: now, or shortly before the first step where that is far off. */
  readonly begins: Temporal.ZonedDateTime;
  /** Corners from left to right; x and y from 0 to 1, y upwards. */
  readonly corners: readonly (readonly [x: number, y: number])[];
  /** Where each step begins, by its rehearsal letter. */
  readonly steps: readonly { readonly letter: string; readonly x: number }[];
  /** The amount at the top, in minor units. */
  readonly top: bigint;
}

export function drawCurve(curve: readonly CurveStep[], until: Temporal.ZonedDateTime): Drawing | undefined {
  const [first, second] = curve;
  if (!first) return undefined;
  const end = until.epochMilliseconds;
  const lead = second ? Math.round((end - second.from.epochMilliseconds) / 3) : 0;
  const early = second ? second.from.subtract({ milliseconds: lead }) : first.from;
  const begins = early.epochMilliseconds > first.from.epochMilliseconds ? early : first.from;
  const start = begins.epochMilliseconds;
  const x = (at: number) => (end === start ? 0 : (Math.max(at, start) - start) / (end - start));
  const [top = 0n] = curve.map(({ total }) => total).sort((one, other) => Number(other - one));
  const y = (total: bigint) => (top === 0n ? 0 : Number((total * 1000n) / top) / 1000);
  const corners = curve.flatMap(({ from, total }, index) => {
    const next = curve[index + 1]?.from.epochMilliseconds ?? end;
    return [
      [x(from.epochMilliseconds), y(total)],
      [x(next), y(total)],
    ] as const;
  });
  const steps = curve.map(({ from }, at) => ({ letter: letterOf(at), x: x(from.epochMilliseconds) }));
  return { begins, corners, steps, top };
}

/** Rehearsal letters as a score has them: A to Z, then AA, BB and so on. */
export function letterOf(at: number): string {
  const letter = String.fromCharCode(65 + (at % 26));
  return letter.repeat(Math.floor(at / 26) + 1);
}
