// Seasons on the wire, and the season score.

import { CALL_KINDS } from '@colla/hours';
import type { SeasonScore, StaveMoney } from '@colla/invoicing';
import { toDecimal } from '@colla/money';
import { z } from 'zod';
import { amount, currencyCode, day, id, instant, words } from './words.ts';

export const season = z.object({ id, name: z.string(), from: day, to: day });
export type SeasonJson = z.output<typeof season>;
export const seasonInput = z.strictObject({ name: words, from: day, to: day });

export const mark = z.object({
  call: id,
  engagement: id,
  title: z.string(),
  kind: z.enum(CALL_KINDS),
  place: z.string(),
  start: instant,
  end: instant,
  minutes: z.int(),
  is: z.enum(['held', 'agreed', 'played', 'cancelled', 'missed']),
});
export type MarkJson = z.output<typeof mark>;

const staveMoney = z.object({ currency: currencyCode, toInvoice: amount, owed: amount, overdue: amount });

export const seasonScore = z.object({
  season,
  staves: z.array(
    z.object({
      party: z.string(),
      name: z.string(),
      marks: z.array(mark),
      engagements: z.int(),
      /** Engagements with something to invoice, and invoices overdue. */
      toInvoice: z.int(),
      overdue: z.int(),
      money: z.array(staveMoney),
      /**
       * The payers and engagements that the money comes from; `toInvoice` is negative where more was invoiced than
       * is owed now.
       */
      owing: z.array(
        staveMoney.extend({ engagement: id, title: z.string(), payer: z.string(), payerName: z.string() }),
      ),
    }),
  ),
  weeks: z.array(
    z.object({
      monday: day,
      played: z.int(),
      agreed: z.int(),
      held: z.int(),
      byStave: z.record(z.string(), z.int()),
    }),
  ),
  weeklyLimit: z.int(),
  /** What work that is done comes to, before tax is added: by month and engagement, with the lines it is in. */
  earned: z.array(
    z.object({
      engagement: id,
      title: z.string(),
      /** The first day of the month. */
      month: day,
      currency: currencyCode,
      amount,
      keys: z.array(z.string()),
    }),
  ),
});
export type SeasonScoreJson = z.output<typeof seasonScore>;

function showStaveMoney({ currency, toInvoice, owed, overdue }: StaveMoney) {
  return {
    currency,
    toInvoice: toDecimal(toInvoice, currency),
    owed: toDecimal(owed, currency),
    overdue: toDecimal(overdue, currency),
  };
}

/** Shows the season score. */
export function showSeasonScore({
  season,
  staves,
  weeks,
  weeklyLimit,
  earned,
}: SeasonScore): SeasonScoreJson {
  return {
    season: { ...season, from: season.from.toString(), to: season.to.toString() },
    staves: staves.map((stave) => ({
      ...stave,
      marks: stave.marks.map((mark) => ({ ...mark, start: mark.start.toString(), end: mark.end.toString() })),
      money: stave.money.map(showStaveMoney),
      owing: stave.owing.map((owing) => ({ ...owing, ...showStaveMoney(owing) })),
    })),
    weeks: weeks.map((week) => ({ ...week, monday: week.monday.toString(), byStave: { ...week.byStave } })),
    weeklyLimit,
    earned: earned.map(({ month, amount, keys, ...earning }) => ({
      ...earning,
      month: month.toString(),
      amount: toDecimal(amount, earning.currency),
      keys: [...keys],
    })),
  };
}
