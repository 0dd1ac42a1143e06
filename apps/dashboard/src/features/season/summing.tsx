// The season in a few sentences: its hours, its money.

import type { WeekOfHours } from '@colla/invoicing';
import { season } from '../../catalogue/season.ts';
import { sayHours, sayMoney } from '../../locale.ts';
import { isOwing, isSome, minutesByStanding, moneyIn, type OwedMoney } from './sums.ts';
import type { StaveJson } from './view.ts';

interface SummingProps {
  staves: readonly StaveJson[];
  weeks: readonly WeekOfHours[];
  /** Whether the whole season is in view. */
  whole: boolean;
}

export function Summing({ staves, weeks, whole }: SummingProps) {
  const sums = moneyIn(staves).filter(isOwing);
  const money = sums.length === 0 ? [season('sumNothing')] : sums.flatMap(sayOwing);
  return <p className="summing">{[sayWork({ staves, weeks, whole }), ...money].join(' ')}</p>;
}

function sayWork({ staves, weeks, whole }: SummingProps): string {
  const { played, agreed, held } = minutesByStanding(weeks);
  return season(whole ? 'sumHours' : 'sumHoursShown', {
    count: staves.reduce((calls, { marks }) => calls + marks.length, 0),
    played: sayHours(played),
    agreed: sayHours(agreed),
    held: sayHours(held),
  });
}

function sayOwing({ currency, toInvoice, beyond, owed, overdue }: OwedMoney): string[] {
  const amount = sayMoney(owed, currency);
  return [
    ...(isSome(toInvoice) ? [season('sumToInvoice', { amount: sayMoney(toInvoice, currency) })] : []),
    ...(isSome(beyond) ? [season('sumBeyond', { amount: sayMoney(beyond, currency) })] : []),
    ...(isSome(owed)
      ? [season(isSome(overdue) ? 'sumOverdue' : 'sumOwed', { amount, overdue: sayMoney(overdue, currency) })]
      : []),
  ];
}
