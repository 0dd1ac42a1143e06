// The marks of one stave as lines: one path for each standing, however many calls there are.
import { PERFORMANCES } from '@colla/hours';
import type { MarkJson } from '@colla/wire';
import { headOf, lengthOf, type Ruler, xOf, yOf } from './ruler.ts';
import { STANDINGS, type Standing } from './view.ts';

/** A call in its place. `y` is the middle of its head. */
export interface Placed {
  readonly mark: MarkJson;
  readonly x: number;
  readonly y: number;
  readonly length: number;
}

export interface Drawing {
  readonly placed: readonly Placed[];
  readonly paths: Readonly<Record<Standing, string>>;
  /** The stems of what somebody listens to. */
  readonly stems: string;
}

export function draw(marks: readonly MarkJson[], ruler: Ruler): Drawing {
  const placed = marks.map((mark) => ({
    mark,
    x: xOf(mark.start, ruler),
    y: yOf(mark.start, ruler),
    length: lengthOf(mark.minutes, ruler),
  }));
  const head = headOf(ruler);
  const path = (is: Standing) =>
    placed
      .filter(({ mark }) => mark.is === is)
      .map((one) => outline(is, one, head))
      .join('');
  return {
    placed,
    paths: Object.fromEntries(STANDINGS.map((is) => [is, path(is)])) as Record<Standing, string>,
    stems: placed
      .filter(({ mark }) => PERFORMANCES.has(mark.kind) && mark.is !== 'missed')
      .map(({ x, y, length }) => `M${at(x + length)} ${at(y)}v${at(-3 * head)}`)
      .join(''),
  };
}

function outline(is: Standing, { x, y, length }: Placed, head: number): string {
  if (is === 'missed') return cross(x + length / 2, y, head / 2);
  const body = headPath(x, y, length, head);
  return is === 'cancelled' ? body + strike(x, y, length, head) : body;
}

/** A head as long as the call: a circle drawn out. */
export function headPath(x: number, y: number, length: number, head: number): string {
  const half = head / 2;
  const straight = at(length - head);
  const turn = `a${at(half)} ${at(half)} 0 0 1 0 `;
  return `M${at(x + half)} ${at(y - half)}h${straight}${turn}${at(head)}h-${straight}${turn}${at(-head)}z`;
}

function strike(x: number, y: number, length: number, head: number): string {
  return `M${at(x - 2)} ${at(y + head * 0.8)}L${at(x + length + 2)} ${at(y - head * 0.8)}`;
}

function cross(x: number, y: number, arm: number): string {
  const far = at(arm * 2);
  return `M${at(x - arm)} ${at(y - arm)}l${far} ${far}m0 -${far}l-${far} ${far}`;
}

// A tenth of a pixel is finer than any screen, and a third of the text.
function at(length: number): string {
  return String(Math.round(length * 10) / 10);
}

/** The call nearest to a point, within reach of a finger. */
export function nearest(placed: readonly Placed[], x: number, y: number): number | undefined {
  let best: number | undefined;
  let least = 24;
  for (const [index, one] of placed.entries()) {
    const aside = Math.max(one.x - x, 0, x - one.x - one.length);
    const away = Math.hypot(aside, one.y - y);
    if (away < least) [best, least] = [index, away];
  }
  return best;
}
