// What of a season is in view: all of it, or one institution, kind or standing; and what the view comes to by week.
import { hoursByWeek, type WeekOfHours } from '@colla/invoicing';
import type { MarkJson, SeasonScoreJson } from '@colla/wire';
import { dayOf } from '../../local-time.ts';

export type StaveJson = SeasonScoreJson['staves'][number];
export type Standing = MarkJson['is'];

/** In the order of the legend. */
export const STANDINGS = ['played', 'agreed', 'held', 'cancelled', 'missed'] as const satisfies Standing[];

/** Standings whose minutes are work; what was cancelled or missed takes no hours. */
export const WORKING = ['played', 'agreed', 'held'] as const;
export type Working = (typeof WORKING)[number];

/** Empty text is “all”. */
export interface View {
  readonly party: string;
  readonly kind: MarkJson['kind'] | '';
  readonly is: Standing | '';
}

export const WHOLE_VIEW: View = { party: '', kind: '', is: '' };

export function isWhole({ party, kind, is }: View): boolean {
  return !party && !kind && !is;
}

/** The staves in view, each with its marks in view; a stave without any is left out. */
export function inView(staves: readonly StaveJson[], view: View): StaveJson[] {
  return staves
    .filter((stave) => !view.party || stave.party === view.party)
    .map((stave) => ({ ...stave, marks: stave.marks.filter((mark) => isInView(mark, view)) }))
    .filter((stave) => stave.marks.length > 0);
}

function isInView(mark: MarkJson, view: View): boolean {
  return (!view.kind || mark.kind === view.kind) && (!view.is || mark.is === view.is);
}

/** The kinds of call that a season has, in the order of the trade's list. */
export function kindsIn(staves: readonly StaveJson[], all: readonly MarkJson['kind'][]): MarkJson['kind'][] {
  const has = new Set(staves.flatMap((stave) => stave.marks.map((mark) => mark.kind)));
  return all.filter((kind) => has.has(kind));
}

/** Sums the marks in view by week, for the weeks of the season. */
export function weeksInView(staves: readonly StaveJson[], mondays: readonly string[]): WeekOfHours[] {
  return hoursByWeek(mondays, staves, ({ start }) => dayOf(start));
}

export function minutesIn(week: WeekOfHours): number {
  return week.played + week.agreed + week.held;
}

/** What is earned by the engagements in view. */
export function earnedInView(
  earned: SeasonScoreJson['earned'],
  staves: readonly StaveJson[],
): SeasonScoreJson['earned'] {
  const inSight = new Set(staves.flatMap(({ marks }) => marks.map(({ engagement }) => engagement)));
  return earned.filter(({ engagement }) => inSight.has(engagement));
}
