// Why the money of a season is what it is: payer by payer, engagement by engagement; what an engagement owes or has
// earned is asked for once somebody opens it.
import type { SeasonScoreJson } from '@colla/wire';
import type { ReactNode } from 'react';
import { season as say } from '../../catalogue/season.ts';
import { sayDay } from '../../locale.ts';
import { summed, type Why } from '../../ui/index.ts';
import { grouped, isSome, type OwedMoney, type OwedPart, summedUp } from './sums.ts';

export type Earning = SeasonScoreJson['earned'][number];
export type Which = 'toInvoice' | 'beyond' | 'owed' | 'overdue';

/** How the page explains what belongs to one engagement; features do not know one another. */
export interface Explained {
  readonly owing: (part: OwedPart, which: Which) => ReactNode;
  readonly earning: (earning: Earning) => ReactNode;
}

const WHAT = {
  toInvoice: 'owedToInvoice',
  beyond: 'owedBeyond',
  owed: 'owedOwed',
  overdue: 'owedOverdue',
} as const;

/** A sum of what payers owe: each part is one payer's for one engagement. */
export function owedWhy(which: Which, sum: OwedMoney, parts: readonly OwedPart[], { owing }: Explained): Why {
  const of = parts
    .filter((part) => part.currency === sum.currency && isSome(part[which]))
    .map(
      (part): Why => ({
        what: say('owedPart', { payer: part.payerName, title: part.title }),
        amount: part[which],
        currency: part.currency,
        later: () => owing(part, which),
      }),
    );
  const total = { what: say(WHAT[which]), amount: sum[which], currency: sum.currency };
  return summed(total, of);
}

/** What is earned in each month and currency, in order. */
export function earnedWhys(earned: readonly Earning[], { earning }: Explained): Why[] {
  return grouped(earned, ({ month, currency }) => `${month} ${currency}`).flatMap((of) => {
    const [first] = of;
    if (!first) return [];
    const parts = of.map(
      (one): Why => ({
        what: one.title,
        amount: one.amount,
        currency: one.currency,
        later: () => earning(one),
      }),
    );
    return [summedUpAs(sayDay(first.month, 'monthYear'), parts, first.currency)];
  });
}

/** What is earned in all, one sum a currency. */
export function earnedInAll(months: readonly Why[]): Why[] {
  return grouped(months, ({ currency }) => currency).map((parts) =>
    summedUpAs(say('earnedInAll'), parts, parts[0]?.currency ?? ''),
  );
}

function summedUpAs(what: string, parts: readonly Why[], currency: string): Why {
  const amounts = parts.map(({ amount }) => amount);
  const total = { what, amount: summedUp(amounts, currency), currency };
  return summed(total, parts);
}
