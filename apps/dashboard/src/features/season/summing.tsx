// The season in two sentences: its hours, its money.
import { season } from '../../catalogue/season.ts';
import { sayHours, sayMoney } from '../../locale.ts';
import { isOwing, minutesByStanding, moneyIn } from './sums.ts';
import type { StaveJson, WeekInView } from './view.ts';

interface SummingProps {
  staves: readonly StaveJson[];
  weeks: readonly WeekInView[];
  /** Whether the whole season is in view. */
  whole: boolean;
}

export function Summing({ staves, weeks, whole }: SummingProps) {
  const minutes = minutesByStanding(weeks);
  const sums = moneyIn(staves).filter(isOwing);
  return (
    <p className="summing">
      {season(whole ? 'sumHours' : 'sumHoursShown', {
        played: sayHours(minutes.played),
        agreed: sayHours(minutes.agreed),
        held: sayHours(minutes.held),
      })}{' '}
      {sums.length === 0 && season('sumNothing')}
      {sums
        .map(({ currency, toInvoice, owed, overdue }) =>
          season('sumMoney', {
            toInvoice: sayMoney(toInvoice, currency),
            owed: sayMoney(owed, currency),
            overdue: sayMoney(overdue, currency),
          }),
        )
        .join(' ')}
    </p>
  );
}
