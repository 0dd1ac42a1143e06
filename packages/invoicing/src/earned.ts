// What is earned in a season: what work that is done comes to, month by month, whether it is invoiced or not.

import { inSeason, type Season, Temporal } from '@colla/calendar';
import type { Engagement } from '@colla/engagements';
import { type Call, timesOf } from '@colla/hours';
import type { Currency } from '@colla/money';
import type { Line, Statement } from '@colla/rates';

/** One engagement's share of one month, before tax is added. Minor units; `keys` are those of the statement's lines. */
export interface Earning {
  readonly engagement: string;
  readonly title: string;
  /** The first day of the month. */
  readonly month: Temporal.PlainDate;
  readonly currency: Currency;
  readonly amount: bigint;
  readonly keys: readonly string[];
}

/**
 * The lines of a statement whose work is done, by the month in which it was: of several calls the last, of a journey or
 * a cost its own day, of what belongs to the whole engagement the day of its last call. Nothing is earned before that.
 */
export function earnedIn(season: Season, engagement: Engagement, statement: Statement): Earning[] {
  const { id, title, currency } = engagement;
  const months = new Map<string, Earning>();
  for (const line of statement.lines) {
    const day = doneOn(line, engagement.calls, statement.asOf);
    if (!day || !inSeason(day, season)) continue;
    const month = day.with({ day: 1 });
    const { amount, keys } = months.get(month.toString()) ?? { amount: 0n, keys: [] };
    months.set(month.toString(), {
      engagement: id,
      title,
      month,
      currency,
      amount: amount + line.amount,
      keys: [...keys, line.key],
    });
  }
  return [...months.values()];
}

/** The day the work of a line was done by, as far as the statement knows; undefined where some of it is ahead. */
export function doneOn(
  line: Line,
  calls: readonly Call[],
  asOf: Temporal.ZonedDateTime,
): Temporal.PlainDate | undefined {
  if (line.on) return Temporal.PlainDate.compare(line.on, asOf.toPlainDate()) > 0 ? undefined : line.on;
  const about = line.calls.length === 0 ? calls : calls.filter(({ id }) => line.calls.includes(id));
  if (about.some(({ standing }) => standing.is === 'agreed')) return undefined;
  const done = about.filter(({ standing }) => standing.is !== 'held');
  return done
    .map((call) => timesOf(call).start.toPlainDate())
    .sort(Temporal.PlainDate.compare)
    .at(-1);
}

/** Earnings by month, and within one by title as the reader's locale orders it. */
export function byMonth(earnings: readonly Earning[], locale: string): Earning[] {
  return earnings.toSorted(
    (one, other) =>
      Temporal.PlainDate.compare(one.month, other.month) || one.title.localeCompare(other.title, locale),
  );
}
